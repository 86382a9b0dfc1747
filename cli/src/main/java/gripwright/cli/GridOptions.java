package gripwright.cli;

import gripwright.study.CaptureMap;
import picocli.CommandLine.Option;

/** The grid of a capture map. */
final class GridOptions {
    static final double SPAN = 0.060;
    private static final int MOST_CELLS = 1001;

    @Option(
            names = "--span",
            paramLabel = "LENGTH",
            converter = Quantities.SpanReader.class,
            description = "Half the width of the map; \"60 mm\" unless said otherwise.")
    private double span = SPAN;

    @Option(
            names = "--cells",
            paramLabel = "N",
            description = "Cells along each side, an odd number; ${DEFAULT-VALUE} unless said otherwise.")
    private int cells;

    GridOptions(int cells) {
        this.cells = cells;
    }

    int cells() {
        return cells;
    }

    /** @throws CommandFailure if there is no such grid */
    CaptureMap map(double wantedShare) {
        Quantities.whole("--cells", cells, 3, MOST_CELLS);
        if (cells % 2 == 0) {
            throw new CommandFailure(
                    Exit.USAGE,
                    "--cells is " + cells + "; expected an odd number, so that one cell is the nominal place: "
                            + (cells - 1) + " or " + (cells + 1));
        }
        return new CaptureMap(span, cells, wantedShare);
    }
}
