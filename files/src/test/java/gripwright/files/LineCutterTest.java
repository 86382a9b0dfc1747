package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Lines out of bytes. */
class LineCutterTest {
    private final List<String> lines = new ArrayList<>();
    private final LineCutter.Taker<RuntimeException> taker = (bytes, kept, length, ended) ->
            lines.add(new String(bytes, 0, kept, StandardCharsets.UTF_8) + "|" + length + (ended ? "" : "|cut"));

    private void feed(LineCutter cutter, String... pieces) {
        for (String piece : pieces) {
            cutter.feed(piece.getBytes(StandardCharsets.UTF_8), taker);
        }
        cutter.finish(taker);
    }

    @Test
    void lineEndsOfBothKindsAreTakenOff() {
        feed(new LineCutter(100), "a,b\r\nc\n\nd");
        assertThat(lines).containsExactly("a,b|3", "c|1", "|0", "d|1|cut");
    }

    @Test
    void anEndlessLineIsCutButItsLengthIsKnown() {
        feed(new LineCutter(4), "123", "456", "789\r\nab\n");
        assertThat(lines).containsExactly("1234|10", "ab|2");
    }

    @Test
    void memoryOfOneLineIsBounded() {
        LineCutter cutter = new LineCutter(1 << 16);
        byte[] block = new byte[1 << 16];
        Arrays.fill(block, (byte) 'x');
        long[] length = {0};
        // 2 GB, the length of which does not fit an int.
        for (int i = 0; i < 1 << 15; i++) {
            cutter.feed(block, taker);
        }
        cutter.feed("\n".getBytes(StandardCharsets.UTF_8), (bytes, kept, all, ended) -> length[0] = all * (kept >> 16));
        assertThat(length[0]).isEqualTo(1L << 31);
    }

    @Test
    void propertyLinesDoNotDependOnHowTheBytesCome() {
        Random random = new Random(7);
        for (int trial = 0; trial < 200; trial++) {
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < 40; i++) {
                text.append("ab,1\n\r".charAt(random.nextInt(6)));
            }
            lines.clear();
            feed(new LineCutter(5), text.toString());
            List<String> atOnce = List.copyOf(lines);
            lines.clear();
            LineCutter cutter = new LineCutter(5);
            int from = 0;
            while (from < text.length()) {
                int to = Math.min(text.length(), from + 1 + random.nextInt(4));
                cutter.feed(text.substring(from, to).getBytes(StandardCharsets.UTF_8), taker);
                from = to;
            }
            cutter.finish(taker);
            assertThat(lines).as("trial " + trial + " of seed 7").isEqualTo(atOnce);
        }
    }
}
