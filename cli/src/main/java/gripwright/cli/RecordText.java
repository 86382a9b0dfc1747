package gripwright.cli;

import gripwright.files.Recording;
import gripwright.signal.WatchWords;
import gripwright.units.QuantityText;
import java.util.ArrayList;
import java.util.List;

/** A recording in words. */
final class RecordText {
    private RecordText() {}

    static String of(Recording r) {
        List<String> lines = new ArrayList<>();
        Recording.Counts c = r.counts();
        if (r.log().isEmpty()) {
            lines.add("log      none written: no reading came");
        } else {
            lines.add("log      " + r.log() + ": " + readings(c.readings()) + rate(r.times())
                    + (c.safe() == c.readings() ? ", all on the disk" : ", " + c.safe() + " on the disk"));
        }
        r.continued()
                .ifPresent(old -> lines.add("         goes on after " + readings(old.readings())
                        + (old.cutBytes() > 0
                                ? "; it ended within a line, whose " + old.cutBytes()
                                        + " bytes are in the side file now"
                                : "")));
        if (c.unsaved() > 0) {
            lines.add("         " + readings(c.unsaved()) + " more came and could not be written");
        }
        lines.add("source   " + r.source() + ": " + r.endWords());
        lines.add("lost     " + lost(c));
        stamps(r, lines);
        if (c.malformed() + c.comments() + c.heads() > 0) {
            lines.add("aside    " + aside(c) + " in " + r.sideFile());
        }
        warnings(r, lines);
        return String.join("\n", lines);
    }

    private static String readings(long n) {
        return n == 1 ? "1 reading" : n + " readings";
    }

    private static String rate(Recording.Times t) {
        return Double.isNaN(t.rate())
                ? ""
                : " in " + QuantityText.number(t.duration(), 4) + " s, " + QuantityText.number(t.rate(), 4)
                        + " a second";
    }

    static String lost(Recording.Counts c) {
        return WatchWords.lost(c.missing(), c.gaps(), c.repeats(), c.late(), c.restarts(), c.overruns());
    }

    private static void part(List<String> parts, long n, String words) {
        if (n > 0) {
            parts.add(n + " " + words);
        }
    }

    private static void stamps(Recording r, List<String> lines) {
        List<String> parts = new ArrayList<>();
        part(parts, r.counts().stampsBack(), "stamps of the source go back");
        part(parts, r.counts().stampsEqual(), "stamps of the source repeat");
        part(parts, r.times().wallSteps(), "steps of this machine's clock (arrival does not follow them)");
        if (r.times().silences() > 0) {
            parts.add(r.times().silences() + (r.times().silences() == 1 ? " silence" : " silences") + ", longest "
                    + QuantityText.number(r.times().longestSilence(), 3) + " s");
        }
        if (!parts.isEmpty()) {
            lines.add("times    " + String.join(", ", parts));
        }
    }

    private static String aside(Recording.Counts c) {
        List<String> parts = new ArrayList<>();
        part(parts, c.malformed(), c.malformed() == 1 ? "malformed line" : "malformed lines");
        part(parts, c.comments(), c.comments() == 1 ? "comment" : "comments");
        part(parts, c.heads(), c.heads() == 1 ? "more line of names" : "more lines of names");
        return String.join(", ", parts);
    }

    private static void warnings(Recording r, List<String> lines) {
        List<String> stuck = new ArrayList<>();
        List<String> saturated = new ArrayList<>();
        List<String> mute = new ArrayList<>();
        for (Recording.Taxel t : r.taxels()) {
            if (t.stuck()) {
                stuck.add(t.column());
            }
            if (t.saturated() > 0) {
                saturated.add(t.column());
            }
            if (t.values() == 0 && r.counts().readings() > 0) {
                mute.add(t.column());
            }
        }
        warning(
                lines,
                r.absent(),
                r.absent().size() == 1 ? "is named in pads.yaml and not sent" : "are named in pads.yaml and not sent");
        warning(lines, stuck, "did not change for 5 s or more at the end: stuck?");
        warning(lines, saturated, "reached an end of the chip's range: saturated");
        warning(lines, mute, "never gave a number");
    }

    private static void warning(List<String> lines, List<String> columns, String words) {
        if (!columns.isEmpty()) {
            lines.add("warning  " + WatchWords.some(columns) + " " + words);
        }
    }
}
