package gripwright.files;

import java.util.Arrays;

/** Cuts a stream of bytes into lines; of an endless one it keeps the beginning only. */
public final class LineCutter {
    private static final int FIRST = 4096;

    /**
     * Takes lines as they end.
     *
     * @param <X> what it may throw
     */
    public interface Taker<X extends Exception> {
        /**
         * One line without its line end.
         *
         * @param bytes valid during the call only
         * @param kept how many of them, at most the limit
         * @param length of the whole line
         * @param ended false for what stands after the last line feed of the source
         */
        void line(byte[] bytes, int kept, long length, boolean ended) throws X;
    }

    private final int limit;
    private byte[] pending = new byte[FIRST];
    private int kept;
    private long length;

    /** @param limit bytes kept of one line */
    public LineCutter(int limit) {
        this.limit = limit;
    }

    /** Hands over every line that ends within these bytes. */
    public <X extends Exception> void feed(byte[] bytes, Taker<X> taker) throws X {
        feed(bytes, bytes.length, taker);
    }

    /** The same for the first {@code count} of them. */
    public <X extends Exception> void feed(byte[] bytes, int count, Taker<X> taker) throws X {
        int from = 0;
        for (int i = 0; i < count; i++) {
            if (bytes[i] == '\n') {
                keep(bytes, from, i);
                end(taker, true);
                from = i + 1;
            }
        }
        keep(bytes, from, count);
    }

    /** Hands over what is left without a line feed, if anything. */
    public <X extends Exception> void finish(Taker<X> taker) throws X {
        if (length > 0) {
            end(taker, false);
        }
    }

    /** Forgets what stands without a line feed. */
    public void forget() {
        kept = 0;
        length = 0;
    }

    private void keep(byte[] bytes, int from, int to) {
        int n = Math.min(to - from, limit - kept);
        if (kept + n > pending.length) {
            pending = Arrays.copyOf(pending, Math.min(limit, Math.max(kept + n, 2 * pending.length)));
        }
        System.arraycopy(bytes, from, pending, kept, n);
        kept += n;
        length += to - from;
    }

    private <X extends Exception> void end(Taker<X> taker, boolean ended) throws X {
        boolean carriage = ended && kept > 0 && kept == length && pending[kept - 1] == '\r';
        int n = carriage ? kept - 1 : kept;
        long whole = carriage ? length - 1 : length;
        forget();
        taker.line(pending, n, whole, ended);
    }
}
