package gripwright.study;

import gripwright.closing.ClosingRunner;
import gripwright.model.GraspObject;
import gripwright.model.Grip;

/** Makes what closes the hand under study with one grip on one object. Called from several threads at once. */
@FunctionalInterface
public interface RunnerFactory {
    /**
     * Makes a runner.
     *
     * @return a runner for the use of one thread
     * @throws IllegalArgumentException if the grip does not fit the hand
     */
    ClosingRunner create(GraspObject object, Grip grip);
}
