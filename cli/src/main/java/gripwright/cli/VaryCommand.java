package gripwright.cli;

import gripwright.files.json.VaryJson;
import gripwright.study.Jobs;
import gripwright.study.Variation;
import gripwright.study.Vary;
import gripwright.study.VaryResult;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What to change. */
@Command(
        name = "vary",
        description = "Move each main quantity of the hand up and down, one at a time: what is worth changing?",
        footer = {
            "",
            "Every change meets the same misplacements and materials as the hand as it is, with the same grips. Also tried:",
            "a spring that is off, worn pads, a cut tendon.",
            "Ctrl-C stops; finished changes are printed and written, and the same command goes on from there.",
            "",
            "Examples:",
            "  gripwright vary bench",
            "  gripwright vary bench --runs 100 --seed 2 --json vary.json --picture vary.svg"
        })
final class VaryCommand extends ProjectCommand {
    private static final int MOST_RUNS = 1_000_000;
    private static final int MOST_SIDE = 1000;

    @Mixin
    private final PadOption pads = new PadOption();

    @Mixin
    private final ThreadOption threads = new ThreadOption();

    @Option(
            names = "--runs",
            paramLabel = "N",
            description = "Runs for each object and change; ${DEFAULT-VALUE} unless said otherwise.")
    private int runs = 24;

    @Option(
            names = "--places",
            paramLabel = "N",
            description = "N x N places for the capture area of each object and change; ${DEFAULT-VALUE} unless said "
                    + "otherwise.")
    private int side = 4;

    @Option(
            names = "--span",
            paramLabel = "LENGTH",
            converter = Quantities.SpanReader.class,
            description = "Half the width of the square with the places; \"60 mm\" unless said otherwise.")
    private double span = GridOptions.SPAN;

    @Option(
            names = "--seed",
            paramLabel = "S",
            description = "Seed of the random samples; ${DEFAULT-VALUE} unless said otherwise.")
    private long seed = 1;

    VaryCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        Jobs jobs = threads.jobs();
        Quantities.whole("--runs", runs, 1, MOST_RUNS);
        Quantities.whole("--places", side, 1, MOST_SIDE);
        OpenProject open = open();
        Studies studies = new Studies(at, open, pads.numerics(), jobs);
        VaryResult vary = studies.vary(new Vary(runs, side, span, seed, Variation.DEFAULT));
        at.out().println(VaryText.of(vary));
        at.out().println(CloseText.judged(OpenProject.CRITERIA));
        at.out().println(open.assumptionsLine());
        results.json(() -> VaryJson.of(open.origin(), OpenProject.CRITERIA, vary));
        results.picture(() -> Pictures.vary(vary));
        return studies.stopped() ? Exit.STOPPED : Exit.YES;
    }
}
