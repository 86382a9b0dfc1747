package gripwright.crosscheck;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** One comparison that a test made. */
record TruthRow(
        String family,
        String what,
        String inputs,
        String source,
        double expected,
        double found,
        String tolerance,
        String why) {
    private static final Pattern NUMBER = Pattern.compile("[0-9]+(\\.[0-9]+)?([eE][-+]?[0-9]+)?( %| of it)?");
    private static final Pattern UNIT = Pattern.compile(".*\\[([^\\]]+)\\]$");
    /** Digits to which numbers are printed and compared, unless the tolerance is coarser. */
    private static final int DIGITS = 5;
    /** Numbers are printed to this share of their tolerance: what is below is noise of rounding. */
    private static final double RESOLUTION = 0.01;

    /** Stands for the expected number where only a bound is known, such as "above 3". */
    private static final String NO_NUMBER = "-";

    static final List<String> COLUMNS =
            List.of("family", "what", "inputs", "source", "expected", "found", "error", "tolerance", "why");

    /** Rows of the files that exist, in the order of the files and of the tests within. */
    static List<TruthRow> read(List<Path> files) throws IOException {
        List<TruthRow> rows = new ArrayList<>();
        for (Path file : files) {
            if (Files.exists(file)) {
                try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(file)) {
                    reader.forEach(r -> rows.add(new TruthRow(
                            r.getField("family"),
                            r.getField("what"),
                            r.getField("inputs"),
                            r.getField("source"),
                            number(r.getField("expected")),
                            number(r.getField("found")),
                            r.getField("tolerance"),
                            r.getField("why"))));
                }
            }
        }
        return rows;
    }

    private static double number(String text) {
        return text.equals(NO_NUMBER) ? Double.NaN : Double.parseDouble(text);
    }

    /** What makes a row the same row in two runs. */
    String key() {
        return family + " | " + what + " | " + inputs;
    }

    /** "N" for "force on the object [N]"; empty without one. */
    String unit() {
        Matcher matcher = UNIT.matcher(what);
        return matcher.matches() ? matcher.group(1) : "";
    }

    double error() {
        return found - expected;
    }

    /** The number that the tolerance begins with, absolute; NaN if it is in words only. */
    double allowed() {
        Matcher matcher = NUMBER.matcher(tolerance);
        if (!matcher.find()) {
            return Double.NaN;
        }
        double number = Double.parseDouble(matcher.group().split(" ", 2)[0]);
        @Nullable String of = matcher.group(3);
        return of == null ? number : number * Math.abs(expected) * (of.equals(" %") ? 0.01 : 1);
    }

    /** Share of the tolerance that is used up; 0 if the tolerance is in words. */
    double used() {
        double allowed = allowed();
        return Double.isNaN(allowed) || allowed == 0 || Double.isNaN(expected) ? 0 : Math.abs(error()) / allowed;
    }

    /** Both numbers are whole, such as counts of links, or yes and no. */
    private boolean counts() {
        return expected == Math.rint(expected) && found == Math.rint(found) && Math.abs(found) < 1e6;
    }

    /** One unit of the last digit that is printed. */
    double resolution() {
        if (counts()) {
            return 0.5;
        }
        double size = Double.isNaN(expected) ? Math.abs(found) : Math.max(Math.abs(expected), Math.abs(found));
        double digits = size == 0 ? 0 : Math.pow(10, Math.floor(Math.log10(size)) + 1 - DIGITS);
        double allowed = allowed();
        double share =
                Double.isNaN(allowed) || allowed == 0 ? 0 : Math.pow(10, Math.floor(Math.log10(RESOLUTION * allowed)));
        // a tolerance beyond the printed digits (a closed formula) shows all of its digits
        return share > 0 && share < digits ? Math.max(share, size * 1e-13) : Math.max(digits, share);
    }

    String print(double value) {
        if (Double.isNaN(value)) {
            return NO_NUMBER;
        }
        double unit = resolution();
        if (counts()) {
            return Long.toString(Math.round(value));
        }
        double rounded = Math.rint(value / unit) * unit;
        int decimals = (int) Math.max(0, -Math.floor(Math.log10(unit) + 1e-9));
        if (rounded == 0) {
            return "0";
        }
        int figures =
                (int) Math.max(0, Math.floor(Math.log10(Math.abs(rounded))) - Math.floor(Math.log10(unit) + 1e-9));
        return Math.abs(rounded) < 1e-4 || decimals > 12
                ? String.format(Locale.ROOT, "%." + figures + "e", rounded)
                : String.format(Locale.ROOT, "%." + decimals + "f", rounded);
    }

    /** The difference with two digits; what is smaller than a printed digit is called that. */
    String printError() {
        double error = Math.abs(error());
        double unit = resolution();
        if (Double.isNaN(error)) {
            return NO_NUMBER;
        }
        if (counts()) {
            return Long.toString(Math.round(error()));
        }
        if (error < unit || error == 0) {
            return unit == 0
                    ? "0"
                    : "< "
                            + String.format(Locale.ROOT, "%.0e", unit)
                                    .replace("e-0", "e-")
                                    .replace("e+0", "e");
        }
        return String.format(Locale.ROOT, "%.2g", error());
    }

    /** True if the numbers of two runs agree to a unit of the last printed digit. */
    boolean agrees(TruthRow other) {
        double unit = 1.01 * Math.max(resolution(), other.resolution());
        return near(expected, other.expected, unit) && near(found, other.found, unit);
    }

    private static boolean near(double a, double b, double unit) {
        return Double.compare(a, b) == 0 || Math.abs(a - b) <= unit;
    }
}
