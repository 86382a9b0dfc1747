package gripwright.cli;

import gripwright.closing.Outcome;
import gripwright.study.CaptureMap;
import gripwright.study.CellShare;
import gripwright.study.MapResult;
import gripwright.study.ShareMap;
import gripwright.study.Uncertain;
import gripwright.units.QuantityText;
import java.util.Map;

/** A capture map as characters, its numbers and what they mean. */
final class MapText {
    /** A map wider than this does not fit beside its axis on a usual terminal. */
    private static final int WIDEST = 111;

    /** Up to here cells are drawn two characters wide, which makes the map about square. */
    private static final int WIDEST_SQUARE = 55;

    private MapText() {}

    static String of(MapResult map) {
        StringBuilder text = new StringBuilder();
        text.append(map.object()).append(" with ").append(map.grip()).append(": object shifted up to +-");
        text.append(Say.length(map.span()))
                .append(" in x (right) and y (up), ")
                .append(map.cells())
                .append(" x ");
        text.append(map.cells())
                .append(" cells of ")
                .append(Say.length(map.pitch()))
                .append("\n\n");
        if (map.cells() <= WIDEST) {
            text.append(cells(map)).append('\n');
        } else {
            text.append("(too wide to draw here; --picture draws it)\n\n");
        }
        text.append(legend(map)).append("\n\n");
        text.append("capture range   ")
                .append(radius(map.captureRadius(), map.captureLimitedBySpan()))
                .append('\n');
        text.append(Say.exactly(map.wantedShare())).append(" range").append(" ".repeat(5));
        text.append(radius(map.shareRadius(), map.shareLimitedBySpan())).append('\n');
        text.append("held area       ")
                .append(QuantityText.number(map.heldArea() * 1e4, 3))
                .append(" cm2")
                .append(interval(map))
                .append("\n\n");
        text.append(Words.wrapped(CaptureMap.CAPTURE_RADIUS)).append('\n');
        text.append(Words.wrapped(CaptureMap.SHARE_RADIUS)).append('\n');
        text.append(Words.wrapped(CaptureMap.HELD_AREA));
        if (map.hasShares()) {
            text.append('\n').append(Words.wrapped(ShareMap.REFINED));
            text.append('\n').append(Words.wrapped(Uncertain.RULE));
            text.append('\n').append(Words.wrapped(ShareMap.SHARED));
            text.append('\n').append(Words.wrapped(ShareMap.MODEL_LIMITED));
        }
        return text.toString();
    }

    private static String radius(double radius, boolean limited) {
        return limited ? "at least " + Say.atLeast(radius) + " (all of the map)" : Say.atLeast(radius);
    }

    private static String cells(MapResult map) {
        StringBuilder text = new StringBuilder();
        for (int row = map.cells() - 1; row >= 0; row--) {
            text.append(' ');
            for (int column = 0; column < map.cells(); column++) {
                Outcome outcome = map.outcome(row, column);
                text.append(column == 0 || map.cells() <= WIDEST_SQUARE ? " " : "");
                text.append(outcome == null ? ' ' : mark(map, row, column, outcome));
            }
            text.append('\n');
        }
        return text.toString();
    }

    private static String legend(MapResult map) {
        StringBuilder text = new StringBuilder("  ");
        for (Map.Entry<Outcome, Integer> entry : map.outcomes().entrySet()) {
            text.append(text.length() > 2 ? ", " : "").append(Say.outcome(entry.getKey()));
            text.append(' ').append(entry.getValue());
        }
        int missing = map.cells() * map.cells() - map.computed();
        String all =
                missing == 0 ? text.toString() : text + (text.length() > 2 ? ", " : "") + "not computed " + missing;
        return map.hasShares() ? all + '\n' + sureness(map) : all;
    }

    /** Cells that hold in some runs show the tenths in which they do. */
    private static char mark(MapResult map, int row, int column, Outcome outcome) {
        CellShare cell = map.cell(row, column);
        if (cell == null || !cell.mixed() || Double.isNaN(map.share(row, column))) {
            return outcome.mark();
        }
        return (char) ('0' + Math.max(0, Math.min(9, (int) Math.floor(10 * map.share(row, column) + 1e-9))));
    }

    private static String sureness(MapResult map) {
        int runs = map.shares().stream()
                .mapToInt(s -> s == null ? 0 : s.here().undecided())
                .sum();
        return "  0 to 9: held in so many tenths of its runs, " + map.count(CellShare::mixed) + " cells, "
                + map.count(CellShare::modelLimited) + " of them model-limited\n  "
                + Say.count(map.closings(), "run", "runs") + " (" + runs + " undecided): "
                + map.count(s -> s.basis() == CellShare.Basis.RUN) + " cells with one, "
                + map.count(s -> s.basis() == CellShare.Basis.ENSEMBLE) + " with several, "
                + map.count(s -> s.basis() == CellShare.Basis.NEIGHBOURS) + " taken over from neighbours";
    }

    private static String interval(MapResult map) {
        return map.hasShares()
                ? " (95 % interval "
                        + QuantityText.number(map.heldAreaInterval().low() * 1e4, 3) + " to "
                        + QuantityText.number(map.heldAreaInterval().high() * 1e4, 3) + " cm2)"
                : "";
    }
}
