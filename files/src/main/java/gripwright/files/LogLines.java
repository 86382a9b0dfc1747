package gripwright.files;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPInputStream;
import org.jspecify.annotations.Nullable;

/**
 * The lines of a log, one at a time: a log may be larger than the memory, and may hold anything. Packed logs (gzip) are
 * told by their first bytes.
 */
final class LogLines implements AutoCloseable {
    static final int LONGEST = 65_536;
    private static final int BUFFER = 1 << 16;

    private final String file;
    private final InputStream in;
    private final byte[] buffer = new byte[BUFFER];
    private final CharsetDecoder decoder = StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    private byte[] line = new byte[1024];
    private int filled;
    private int at;
    private int number;
    private boolean cut;

    private LogLines(String file, InputStream in) {
        this.file = file;
        this.in = in;
    }

    static LogLines open(Path path) throws IOException {
        InputStream in = new BufferedInputStream(Files.newInputStream(path), BUFFER);
        try {
            in.mark(2);
            boolean packed = in.read() == 0x1f && in.read() == 0x8b;
            in.reset();
            return new LogLines(String.valueOf(path.getFileName()), packed ? new GZIPInputStream(in, BUFFER) : in);
        } catch (IOException e) {
            in.close();
            throw e;
        }
    }

    String file() {
        return file;
    }

    /** Number of the line read last, from 1. */
    int number() {
        return number;
    }

    /** Whether the file ended within a line, which was then not given out. */
    boolean cut() {
        return cut;
    }

    /** The next whole line without its end, or null after the last one. */
    @Nullable
    String next() throws IOException {
        int length = 0;
        while (true) {
            if (at == filled) {
                filled = in.read(buffer);
                at = 0;
                if (filled <= 0) {
                    filled = 0;
                    cut = length > 0;
                    return null;
                }
            }
            int end = at;
            while (end < filled && buffer[end] != '\n') {
                end++;
            }
            if (length + end - at > LONGEST) {
                throw new LogFault(
                        file,
                        number + 1,
                        "the line is longer than " + LONGEST + " bytes",
                        "one reading a line, ended by a line feed; is this the right file?");
            }
            if (line.length < length + end - at) {
                line = Arrays.copyOf(line, Math.max(2 * line.length, length + end - at));
            }
            System.arraycopy(buffer, at, line, length, end - at);
            length += end - at;
            at = end;
            if (at < filled) {
                at++;
                number++;
                return text(length);
            }
        }
    }

    private String text(int bytes) {
        int length = bytes > 0 && line[bytes - 1] == '\r' ? bytes - 1 : bytes;
        boolean plain = true;
        for (int i = 0; i < length && plain; i++) {
            plain = line[i] >= 0;
        }
        if (plain) {
            return new String(line, 0, length, StandardCharsets.ISO_8859_1);
        }
        try {
            return decoder.decode(ByteBuffer.wrap(line, 0, length)).toString();
        } catch (CharacterCodingException e) {
            throw new LogFault(
                    file,
                    number,
                    "the line is not valid UTF-8",
                    "a log saved as UTF-8, such as 'gripwright record' writes");
        }
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
