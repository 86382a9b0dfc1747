package gripwright.bench;

import gripwright.closing.Numerics;
import gripwright.model.Project;
import gripwright.study.RunnerFactory;

/** Makes what closes a project's hand: the same as on the command line. */
@FunctionalInterface
public interface Closings {
    RunnerFactory of(Project project, Numerics numerics);
}
