package gripwright.study;

import gripwright.closing.ClosingRunner;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * The rounds of jobs of one map: they share their runners, which are dear to make, and one progress.
 *
 * <p>Rounds follow on one another; how many jobs the later ones have is known only then, so the progress grows its total.
 */
final class MapJobs {
    private final Jobs jobs;
    private final Jobs.Progress progress;
    private final Function<RunnerFactory, ClosingRunner> make;
    private final Map<RunnerFactory, Queue<ClosingRunner>> idle = new HashMap<>();
    private int finished;
    private boolean stopped;

    MapJobs(Jobs jobs, Jobs.Progress progress, Function<RunnerFactory, ClosingRunner> make) {
        this.jobs = jobs;
        this.progress = progress;
        this.make = make;
    }

    /** Results in the order of the jobs, null = not finished because it was stopped. */
    <J, R> List<R> run(RunnerFactory factory, List<J> list, BiFunction<ClosingRunner, J, R> work) {
        Queue<ClosingRunner> free = idle.computeIfAbsent(factory, f -> new ConcurrentLinkedQueue<>());
        Queue<ClosingRunner> taken = new ConcurrentLinkedQueue<>();
        int before = finished;
        List<R> done = jobs.run(
                list,
                () -> {
                    ClosingRunner runner = free.poll();
                    ClosingRunner mine = runner == null ? make.apply(factory) : runner;
                    taken.add(mine);
                    return mine;
                },
                work,
                (now, of) -> {
                    boolean go = progress.done(before + now, before + of);
                    if (!go) {
                        stopped = true;
                    }
                    return go;
                });
        free.addAll(new ArrayList<>(taken));
        finished += list.size();
        return done;
    }

    /** True if the round had jobs and was not stopped. */
    boolean goesOn(List<?> round) {
        return !round.isEmpty() && !stopped;
    }

    boolean stopped() {
        return stopped;
    }
}
