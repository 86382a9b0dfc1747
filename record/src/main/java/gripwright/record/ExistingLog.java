package gripwright.record;

import gripwright.files.LineCutter;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * A log that is there already, to be gone on with.
 *
 * @param columns its line of names
 * @param whole where its last whole line ends [bytes]
 * @param tail what stands behind: the beginning of a line that was cut, text of at most {@link #TAIL} bytes
 * @param cutBytes length of all that stands behind
 * @param readings whole ones
 * @param arrival of the last one [us]
 * @param wall of the last one [ms], 0 if there is none
 */
record ExistingLog(String columns, long whole, String tail, long cutBytes, long readings, long arrival, long wall) {
    private static final int TAIL = 200;
    private static final int BLOCK = 1 << 16;

    /** Looks through the file. */
    static ExistingLog read(Path path) throws IOException, LogFailure {
        Scan scan = new Scan();
        long read = 0;
        long whole = 0;
        try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ)) {
            ByteBuffer block = ByteBuffer.allocate(BLOCK);
            while (channel.read(block) >= 0) {
                byte[] bytes = java.util.Arrays.copyOf(block.array(), block.position());
                block.clear();
                scan.cutter.feed(bytes, scan);
                for (int i = bytes.length - 1; i >= 0; i--) {
                    if (bytes[i] == '\n') {
                        whole = read + i + 1;
                        break;
                    }
                }
                read += bytes.length;
            }
            scan.cutter.finish(scan);
        }
        if (!scan.isLog) {
            throw new LogFailure(path + " is there already and is no log of this program; choose another file");
        }
        if (scan.columns.isEmpty()) {
            throw new LogFailure(path
                    + " is there already; it is a log that ends within its head: delete it or choose another file");
        }
        return new ExistingLog(
                scan.columns, whole, scan.tail, scan.cutBytes, scan.readings, scan.arrival(path), scan.wall(path));
    }

    private static final class Scan implements LineCutter.Taker<RuntimeException> {
        private final LineCutter cutter = new LineCutter(Recorder.LONGEST_LINE + 100);
        private boolean isLog;
        private boolean first = true;
        private String columns = "";
        private long readings;
        private long cutBytes;
        private String tail = "";
        private String last = "";

        @Override
        public void line(byte[] bytes, int kept, long length, boolean ended) {
            if (first) {
                isLog = ended && text(bytes, kept).equals(LogFormat.MAGIC);
                first = false;
            }
            if (!ended) {
                cutBytes = length;
                tail = text(bytes, Math.min(kept, TAIL));
                return;
            }
            if (isLog && kept > 0 && bytes[0] != '#') {
                if (columns.isEmpty()) {
                    columns = text(bytes, kept);
                } else {
                    readings++;
                    last = text(bytes, Math.min(kept, 60)); // its first two fields suffice
                }
            }
        }

        private static String text(byte[] bytes, int length) {
            return new String(bytes, 0, length, StandardCharsets.UTF_8);
        }

        private long arrival(Path path) throws LogFailure {
            return readings == 0 ? 0 : Math.round(1e6 * field(0, path));
        }

        private long wall(Path path) throws LogFailure {
            return readings == 0 ? 0 : (long) field(1, path);
        }

        private double field(int index, Path path) throws LogFailure {
            String[] fields = last.split(",", -1);
            if (fields.length > LogFormat.OWN && !Numbers.valid(fields[index])) {
                throw new LogFailure(
                        path + " is there already; its last line '" + RowReader.clip(last) + "' has no time");
            }
            return fields.length > LogFormat.OWN ? Numbers.value(fields[index]) : 0;
        }
    }
}
