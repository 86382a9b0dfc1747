package gripwright.study;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Supplier;

/**
 * Runs many independent jobs, somewhere. Results come back in the order of the jobs whatever the order of execution,
 * so that a study gives the same bytes on one thread, many threads or other machines.
 */
public interface Jobs {
    /**
     * @param jobs what to do
     * @param worker makes one worker per thread (a closing runner is not shared between threads)
     * @param progress told after each finished job; may be called from any thread
     * @return one result per job, null where the study was stopped before the job was done
     */
    <W, J, R> List<R> run(List<J> jobs, Supplier<W> worker, BiFunction<W, J, R> work, Progress progress);

    /** Told how far a study has come; returns false to stop it. */
    interface Progress {
        /** @return true to go on, false to stop after the jobs under way */
        boolean done(int finished, int of);

        Progress NONE = (finished, of) -> true;
    }
}
