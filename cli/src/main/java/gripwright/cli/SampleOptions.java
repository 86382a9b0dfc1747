package gripwright.cli;

import picocli.CommandLine.Option;

/** How many random runs, from which seed. */
final class SampleOptions {
    private static final int MOST_RUNS = 10_000_000;

    @Option(
            names = "--runs",
            paramLabel = "N",
            description = "Runs for each object and grip; ${DEFAULT-VALUE} unless said otherwise.")
    private int runs = 200;

    @Option(
            names = "--seed",
            paramLabel = "S",
            description = "Seed of the random samples; ${DEFAULT-VALUE} unless said otherwise.")
    private long seed = 1;

    void check() {
        Quantities.whole("--runs", runs, 1, MOST_RUNS);
    }

    int runs() {
        return runs;
    }

    long seed() {
        return seed;
    }
}
