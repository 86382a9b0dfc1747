package gripwright.cli;

import gripwright.study.Jobs;
import java.io.PrintWriter;
import java.util.function.LongSupplier;

/**
 * How far a study has come: a bar that redraws itself on a terminal, a plain line now and then elsewhere. Ends the study
 * if an interruption was asked for.
 */
final class ProgressLine implements Jobs.Progress {
    private static final int BAR = 30;
    private static final long REDRAW_NANOS = 100_000_000L;
    private static final long PLAIN_NANOS = 10_000_000_000L;

    private final String what;
    private final PrintWriter to;
    private final boolean terminal;
    private final LongSupplier clock;
    private final Interruption interruption;
    private final long start;
    private long last;
    private boolean drawn;

    /** @param clock [ns], from any start */
    ProgressLine(String what, PrintWriter to, boolean terminal, LongSupplier clock, Interruption interruption) {
        this.what = what;
        this.to = to;
        this.terminal = terminal;
        this.clock = clock;
        this.interruption = interruption;
        this.start = clock.getAsLong();
        this.last = start;
    }

    @Override
    public synchronized boolean done(int finished, int of) {
        long now = clock.getAsLong();
        if (now - last >= (terminal ? REDRAW_NANOS : PLAIN_NANOS)) {
            last = now;
            draw(finished, of, now);
        }
        return !interruption.requested();
    }

    /** Leaves the bar's line empty for what is printed next. */
    synchronized void end() {
        if (drawn && terminal) {
            to.print("\r\u001b[K");
            to.flush();
        }
    }

    private void draw(int finished, int of, long now) {
        double seconds = (now - start) * 1e-9;
        String left = "about " + Math.max(1, Math.round(seconds * (of - finished) / Math.max(1, finished))) + " s left";
        if (terminal) {
            int full = (int) ((long) BAR * finished / Math.max(1, of));
            to.print("\r" + what + " [" + "=".repeat(full) + " ".repeat(BAR - full) + "] " + finished + " of " + of
                    + ", " + left + "\u001b[K");
        } else {
            to.println(what + ": " + finished + " of " + of + " runs, " + left);
        }
        to.flush();
        drawn = true;
    }
}
