package gripwright.cli;

import gripwright.study.Jobs;
import gripwright.study.ThreadJobs;
import picocli.CommandLine.Option;

/** On how many threads a study runs. */
final class ThreadOption {
    private static final int MOST = 1024;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description =
                    "Threads to use; one per processor unless said otherwise. The result is the same for any number.")
    private int threads = Runtime.getRuntime().availableProcessors();

    Jobs jobs() {
        return new ThreadJobs(Quantities.whole("--threads", threads, 1, MOST));
    }
}
