package gripwright.cli;

import gripwright.files.Recording;
import gripwright.record.Live;
import gripwright.record.Recorder;
import gripwright.signal.WatchWords;
import gripwright.units.QuantityText;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** A recording while it runs: a few lines that redraw themselves on a terminal, plain lines now and then elsewhere. */
final class RecordView implements Recorder.Watcher {
    private static final double REDRAW = 0.25;
    private static final double PLAIN = 10;
    private static final int WIDTH = 100;
    private static final String LEVELS = "▁▂▃▄▅▆▇█";

    private final PrintWriter to;
    private final boolean terminal;
    private final Path log;
    private final String source;
    private final Interruption interruption;
    private final Set<String> said = new HashSet<>();
    private double last = Double.NEGATIVE_INFINITY;
    private int drawn;

    RecordView(PrintWriter to, boolean terminal, Path log, String source, Interruption interruption) {
        this.to = to;
        this.terminal = terminal;
        this.log = log;
        this.source = source;
        this.interruption = interruption;
    }

    @Override
    public boolean goOn(Live live) {
        if (terminal) {
            if (live.seconds() - last >= REDRAW) {
                last = live.seconds();
                redraw(lines(live));
            }
        } else {
            plain(live);
        }
        return !interruption.requested();
    }

    /** Leaves the screen to what is printed next. */
    void end() {
        if (terminal && drawn > 0) {
            redraw(List.of());
        }
    }

    private void redraw(List<String> lines) {
        StringBuilder out = new StringBuilder();
        if (drawn > 0) {
            out.append("\u001b[").append(drawn).append("A");
        }
        out.append("\r\u001b[J"); // from here to the end of the screen
        for (String line : lines) {
            out.append(line).append('\n');
        }
        drawn = lines.size();
        to.print(out);
        to.flush();
    }

    private void plain(Live live) {
        for (String warning : warnings(live)) {
            if (said.add(warning.replaceAll("[0-9.]+ s", ""))) {
                to.println("record: warning: " + warning);
            }
        }
        if (live.seconds() - Math.max(0, last) >= PLAIN) {
            last = live.seconds();
            Recording.Counts c = live.soFar().counts();
            to.println("record: " + clock(live.seconds()) + ", " + c.readings() + " readings ("
                    + QuantityText.number(live.rate(), 4) + " a second), " + RecordText.lost(c) + ", " + c.malformed()
                    + " malformed");
            to.flush();
        }
    }

    /** What stands on the screen. */
    static List<String> lines(Live live, Path log, String source) {
        Recording r = live.soFar();
        Recording.Counts c = r.counts();
        List<String> lines = new ArrayList<>();
        lines.add(cut("recording " + source + " -> " + log + "   " + clock(live.seconds()) + "   Ctrl-C ends it"));
        lines.add("rate      " + QuantityText.number(live.rate(), 4) + " a second; " + c.readings() + " readings, "
                + c.safe() + " of them on the disk"
                + (live.waiting() > 1 << 16 ? "; " + (live.waiting() >> 10) + " kB wait" : ""));
        lines.add("lost      " + RecordText.lost(c) + "; " + c.malformed() + " malformed");
        if (!live.others().isEmpty()) {
            StringBuilder others = new StringBuilder("last      ");
            for (Map.Entry<String, Double> other : live.others().entrySet()) {
                others.append(other.getKey())
                        .append(' ')
                        .append(QuantityText.number(other.getValue(), 9))
                        .append("   ");
            }
            lines.add(cut(others.toString().stripTrailing()));
        }
        lines.addAll(levels(r.taxels()));
        warnings(live).forEach(w -> lines.add(cut("warning   " + w)));
        if (!live.lastFault().isEmpty()) {
            lines.add(cut("aside     " + live.lastFault()));
        }
        return lines;
    }

    private List<String> lines(Live live) {
        return lines(live, log, source);
    }

    private static List<String> warnings(Live live) {
        List<String> warnings = new ArrayList<>();
        if (live.silentFor() > Recorder.SILENCE) {
            warnings.add(WatchWords.nothing(live.silentFor()));
        }
        warnings.addAll(live.warnings());
        return warnings;
    }

    /** One mark a taxel: where its last value lies between the lowest and the highest so far. */
    private static List<String> levels(List<Recording.Taxel> taxels) {
        List<String> lines = new ArrayList<>();
        StringBuilder marks = new StringBuilder();
        for (int i = 0; i < taxels.size(); i++) {
            Recording.Taxel t = taxels.get(i);
            boolean newPad = i > 0 && !t.pad().equals(taxels.get(i - 1).pad());
            if (newPad || marks.length() >= WIDTH - 10) {
                lines.add((lines.isEmpty() ? "taxels    " : "          ") + marks);
                marks.setLength(0);
            }
            double share = (t.last() - t.least()) / (t.greatest() - t.least());
            marks.append(
                    Double.isNaN(share)
                            ? (t.values() == 0 ? '?' : '-')
                            : LEVELS.charAt((int) Math.min(LEVELS.length() - 1, share * LEVELS.length())));
        }
        if (marks.length() > 0) {
            lines.add((lines.isEmpty() ? "taxels    " : "          ") + marks);
        }
        return lines;
    }

    private static String clock(double seconds) {
        long s = (long) seconds;
        return String.format(Locale.ROOT, "%d:%02d:%02d", s / 3600, s / 60 % 60, s % 60);
    }

    /** So that no line breaks and the count of lines to go back stays right. */
    private static String cut(String line) {
        return line.length() <= WIDTH ? line : line.substring(0, WIDTH - 3) + "...";
    }
}
