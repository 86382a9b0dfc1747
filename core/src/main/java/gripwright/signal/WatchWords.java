package gripwright.signal;

import gripwright.units.QuantityText;
import java.util.ArrayList;
import java.util.List;

/** What a watch over readings found, in words: the same wherever a recording is looked at. */
public final class WatchWords {
    private static final int NAMED = 8;

    private WatchWords() {}

    /** The source says nothing, for so long [s]. */
    public static String nothing(double seconds) {
        return "nothing came for " + QuantityText.number(Math.floor(seconds), 6) + " s";
    }

    /**
     * One sentence for each kind of trouble.
     *
     * @param silent columns without a number
     */
    public static List<String> warnings(List<String> stuck, List<String> saturated, List<String> silent) {
        List<String> warnings = new ArrayList<>();
        if (!stuck.isEmpty()) {
            warnings.add(some(stuck) + (stuck.size() == 1 ? " does" : " do") + " not change any more: stuck?");
        }
        if (!saturated.isEmpty()) {
            warnings.add(some(saturated) + " reached an end of the chip's range");
        }
        if (!silent.isEmpty()) {
            warnings.add(some(silent) + (silent.size() == 1 ? " gives" : " give") + " no number");
        }
        return warnings;
    }

    /** What is lost, by the count of the readings. */
    public static String lost(long missing, long gaps, long repeats, long late, long restarts, long overruns) {
        List<String> parts = new ArrayList<>();
        parts.add(
                missing == 0
                        ? "no reading missing"
                        : (missing == 1 ? "1 reading" : missing + " readings") + " missing in "
                                + (gaps == 1 ? "1 gap" : gaps + " gaps"));
        part(parts, repeats, "repeated");
        part(parts, late, "late");
        part(parts, restarts, restarts == 1 ? "new start of the count" : "new starts of the count");
        part(parts, overruns, overruns == 1 ? "overrun of the counter" : "overruns of the counter");
        return String.join(", ", parts);
    }

    private static void part(List<String> parts, long n, String words) {
        if (n > 0) {
            parts.add(n + " " + words);
        }
    }

    /** The first few, and how many more. */
    public static String some(List<String> columns) {
        return columns.size() <= NAMED
                ? String.join(", ", columns)
                : String.join(", ", columns.subList(0, NAMED)) + " and " + (columns.size() - NAMED) + " more";
    }
}
