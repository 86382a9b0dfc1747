package gripwright.signal;

import java.util.BitSet;

/** What the source's count of readings says about lost, repeated and late ones. */
public final class SequenceCheck {
    private static final int WINDOW = 4096;
    /** A count that starts anew this near its end has run over; elsewhere the source has started anew. */
    private static final int NEAR = 16;

    private static final long[] ENDS = {1L << 8, 1L << 16, 1L << 32};

    private final BitSet seen = new BitSet(WINDOW);
    private boolean begun;
    private long first;
    private long last;
    private long greatest;
    private long suspect = -1;

    private long gaps;
    private long missing;
    private long repeats;
    private long late;
    private long restarts;
    private long overruns;

    /** Takes the count of the next reading; returns how many are missing before it. */
    public long next(long count) {
        if (!begun) {
            begin(count);
            return 0;
        }
        long lacking = 0;
        if (count > last) {
            lacking = forward(count, count - last - 1);
        } else if (count == last) {
            repeats++;
        } else if (overrun(count)) {
            overruns++;
            lacking = forward(count, end() - 1 - last + count);
            first = 0;
            greatest = 0;
        } else if (suspect >= 0 && count == suspect + 1) {
            repeats--; // what looked like a repeat was the first reading after a new start
            restart(count);
            return 0;
        } else if (last - count < WINDOW && count >= first) {
            if (seen.get(slot(count))) {
                repeats++;
                suspect = count;
                return 0;
            }
            late++;
            missing--;
            seen.set(slot(count));
        } else {
            restart(count);
        }
        suspect = -1;
        greatest = Math.max(greatest, count);
        return lacking;
    }

    private void begin(long count) {
        begun = true;
        first = count;
        last = count;
        seen.clear();
        seen.set(slot(count));
        greatest = Math.max(greatest, count);
        suspect = -1;
    }

    private void restart(long count) {
        restarts++;
        begin(count);
    }

    private long forward(long count, long lacking) {
        if (lacking > 0) {
            gaps++;
            missing += lacking;
        }
        if (count - last >= WINDOW || count < last) {
            seen.clear();
        } else {
            for (long c = last + 1; c < count; c++) {
                seen.clear(slot(c));
            }
        }
        seen.set(slot(count));
        last = count;
        return lacking;
    }

    private boolean overrun(long count) {
        long end = end();
        return end > 0 && end - last <= NEAR && count < NEAR;
    }

    /** One more than the greatest count of a counter of 8, 16 or 32 bits that may have been near its end, or 0. */
    private long end() {
        for (long end : ENDS) {
            if (last < end && greatest < end && end - last <= NEAR) {
                return end;
            }
        }
        return 0;
    }

    private static int slot(long count) {
        return (int) Math.floorMod(count, (long) WINDOW);
    }

    /** Places where readings are missing. */
    public long gaps() {
        return gaps;
    }

    /** Readings missing in all gaps. */
    public long missing() {
        return missing;
    }

    /** Readings whose count had come before. */
    public long repeats() {
        return repeats;
    }

    /** Readings that came after later ones. */
    public long late() {
        return late;
    }

    /** How often the source began to count anew. */
    public long restarts() {
        return restarts;
    }

    /** How often its counter of 8, 16 or 32 bits ran over. */
    public long overruns() {
        return overruns;
    }
}
