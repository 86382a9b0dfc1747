package gripwright.cli;

import gripwright.closing.Outcome;
import gripwright.study.CaptureMap;
import gripwright.study.MapResult;
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
                .append(" cm2\n\n");
        text.append(Words.wrapped(CaptureMap.CAPTURE_RADIUS)).append('\n');
        text.append(Words.wrapped(CaptureMap.SHARE_RADIUS)).append('\n');
        text.append(Words.wrapped(CaptureMap.HELD_AREA));
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
                text.append(outcome == null ? ' ' : outcome.mark());
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
        return missing == 0 ? text.toString() : text + (text.length() > 2 ? ", " : "") + "not computed " + missing;
    }
}
