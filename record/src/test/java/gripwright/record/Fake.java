package gripwright.record;

import gripwright.files.Recording;
import gripwright.signal.Layout;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;

/** Sources and recordings for tests. */
final class Fake {
    static final LogFormat.Heading HEADING =
            new LogFormat.Heading("bench", "three fingers", List.of("left strip"), Map.of("t", "s", "p00", "Pa"));

    private Fake() {}

    /** A layout of seq, t, p00 and p01, with a range of 50 to 115 kPa. */
    static Layout layout() {
        return new Layout(
                true,
                List.of("seq", "t", "p00", "p01"),
                List.of("seq", "t", "p00", "p01"),
                Optional.of("t"),
                1,
                Optional.of("seq"),
                List.of(
                        new Layout.Taxel("p00", "left strip", 50_000, 115_000),
                        new Layout.Taxel("p01", "left strip", 50_000, 115_000)),
                List.of(),
                Optional.empty());
    }

    /** Hands out the given bytes piece by piece, then ends or fails. */
    static Source source(@Nullable IOException failure, byte[]... pieces) {
        return new Source() {
            private int next;

            @Override
            public int read(byte[] into) throws IOException {
                if (next < pieces.length) {
                    byte[] piece = pieces[next++];
                    System.arraycopy(piece, 0, into, 0, piece.length);
                    return piece.length;
                }
                if (failure != null) {
                    throw failure;
                }
                return -1;
            }

            @Override
            public void close() {}
        };
    }

    static Source source(String text) {
        List<byte[]> pieces = new ArrayList<>();
        byte[] all = text.getBytes(StandardCharsets.UTF_8);
        for (int i = 0; i < all.length; i += 50_000) {
            pieces.add(java.util.Arrays.copyOfRange(all, i, Math.min(all.length, i + 50_000)));
        }
        return source(null, pieces.toArray(new byte[0][]));
    }

    static Recorder.Plan plan(Path log, Layout layout) {
        return plan(log, layout, new SourceAddress.StandardInput());
    }

    static Recorder.Plan plan(Path log, Layout layout, SourceAddress address) {
        return new Recorder.Plan(
                log, log.toString(), address, "-", layout, HEADING, Long.MAX_VALUE, Double.POSITIVE_INFINITY);
    }

    static Recording record(Path log, Layout layout, String text) {
        return Recorder.run(plan(log, layout), source(text), clocks(), live -> true);
    }

    /** Clocks that go on by one millisecond at each look. */
    static Clocks clocks() {
        AtomicLong ticks = new AtomicLong();
        return new Clocks(() -> ticks.incrementAndGet() * 1_000_000, () -> 1_795_600_000_000L + ticks.get());
    }
}
