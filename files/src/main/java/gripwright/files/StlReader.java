package gripwright.files;

import gripwright.math.Vec3;
import gripwright.shape.Triangle;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Reads STL files, text or binary, into triangles. STL says nothing of units, so the caller must; the normals in the
 * file are not used, the order of the corners tells the outside.
 *
 * <p>Layout of the file: 80 bytes of free text, a 4-byte count, 50 bytes per triangle (normal, three corners, two
 * spare bytes), little-endian; or text with {@code facet}, {@code outer loop}, {@code vertex} lines. From memory of the
 * format's description; there is no standard.
 */
public final class StlReader {
    /** Largest file accepted [bytes]. */
    public static final long MOST_BYTES = 50_000_000;

    /** Most triangles accepted; a grid of the distance shows no more detail. */
    public static final int MOST_TRIANGLES = 200_000;

    private static final int HEADER = 84;
    private static final int RECORD = 50;

    private final String file;
    private final double unit;

    private StlReader(String file, double unit) {
        this.file = file;
        this.unit = unit;
    }

    /**
     * Triangles of a file, in its order.
     *
     * @param unit length of one unit of the file [m], 0.001 for millimetres
     * @throws IOException if the file cannot be read
     * @throws IllegalArgumentException if it is not a sound STL file, with the file's name, the line or byte, what was
     *     expected and what to do
     */
    public static List<Triangle> read(Path file, double unit) throws IOException {
        String name = String.valueOf(file.getFileName());
        long size = Files.size(file);
        if (size > MOST_BYTES) {
            throw new IllegalArgumentException(name + ": the file has " + size + " bytes; at most " + MOST_BYTES
                    + " are read: reduce the number of triangles in the program that made it");
        }
        return new StlReader(name, unit).triangles(Files.readAllBytes(file));
    }

    /** The same from bytes; {@code name} is used in messages. */
    static List<Triangle> read(byte[] bytes, String name, double unit) {
        return new StlReader(name, unit).triangles(bytes);
    }

    private List<Triangle> triangles(byte[] bytes) {
        if (bytes.length == 0) {
            throw fault("", "the file is empty; expected an STL mesh");
        }
        // A binary file may begin with "solid" too, so its exact length decides first.
        if (bytes.length >= HEADER && bytes.length == HEADER + RECORD * count(bytes)) {
            return binary(bytes);
        }
        return looksLikeText(bytes) ? new Text(bytes).triangles() : binary(bytes);
    }

    private static long count(byte[] bytes) {
        return Integer.toUnsignedLong(
                ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getInt(80));
    }

    private static boolean looksLikeText(byte[] bytes) {
        int some = Math.min(bytes.length, 512);
        for (int i = 0; i < some; i++) {
            if (bytes[i] == 0) {
                return false;
            }
        }
        return new String(bytes, 0, some, StandardCharsets.ISO_8859_1)
                .stripLeading()
                .toLowerCase(Locale.ROOT)
                .startsWith("solid");
    }

    private List<Triangle> binary(byte[] bytes) {
        if (bytes.length < HEADER) {
            throw fault(
                    "",
                    "neither text (it does not begin with 'solid') nor binary (it has " + bytes.length
                            + " bytes; a binary STL file has 84 or more): check that this is an STL file");
        }
        long count = count(bytes);
        long needed = HEADER + RECORD * count;
        if (needed != bytes.length) {
            String where = ", byte 80";
            String found = "the count says " + count + " triangles, which takes " + needed + " bytes, but the file has "
                    + bytes.length;
            throw fault(
                    where,
                    found
                            + (needed > bytes.length
                                    ? ": the file is cut short or not STL; export it again"
                                    : ": there is something after the last triangle; export it again"));
        }
        if (count == 0) {
            throw fault(", byte 80", "the file holds no triangles; export the part again");
        }
        tooMany(count, ", byte 80");
        ByteBuffer data = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        List<Triangle> all = new ArrayList<>((int) count);
        for (int t = 0; t < count; t++) {
            int at = HEADER + RECORD * t + 12;
            all.add(new Triangle(corner(data, at, t), corner(data, at + 12, t), corner(data, at + 24, t)));
        }
        return all;
    }

    private Vec3 corner(ByteBuffer data, int at, int triangle) {
        double[] v = new double[3];
        for (int k = 0; k < 3; k++) {
            v[k] = data.getFloat(at + 4 * k);
            if (!Double.isFinite(v[k])) {
                throw fault(
                        ", byte " + (at + 4 * k),
                        "a coordinate of triangle " + (triangle + 1) + " is " + v[k]
                                + "; expected a finite number: export the part again");
            }
        }
        return new Vec3(v[0] * unit, v[1] * unit, v[2] * unit);
    }

    private void tooMany(long count, String where) {
        if (count > MOST_TRIANGLES) {
            throw fault(
                    where,
                    "more than " + MOST_TRIANGLES
                            + " triangles: reduce their number (decimate) in the program that made the file");
        }
    }

    private IllegalArgumentException fault(String where, String what) {
        return new IllegalArgumentException(file + where + ": " + what);
    }

    /** Reader of the text form, line by line; words may stand on any lines as long as facets are complete. */
    private final class Text {
        private final String[] lines;
        private int line;

        Text(byte[] bytes) {
            lines = new String(bytes, StandardCharsets.ISO_8859_1).split("\r\n|\n|\r", -1);
        }

        List<Triangle> triangles() {
            List<Triangle> all = new ArrayList<>();
            next("solid");
            while (true) {
                String[] words = next("facet", "endsolid");
                if (words[0].equals("endsolid")) {
                    if (!more()) {
                        break;
                    }
                    next("solid");
                    continue;
                }
                next("outer");
                Vec3 a = vertex();
                Vec3 b = vertex();
                Vec3 c = vertex();
                next("endloop");
                next("endfacet");
                all.add(new Triangle(a, b, c));
                tooMany(all.size(), ", line " + line);
            }
            if (all.isEmpty()) {
                throw fault(", line " + line, "the file holds no triangles; export the part again");
            }
            return all;
        }

        private boolean more() {
            while (line < lines.length && lines[line].isBlank()) {
                line++;
            }
            return line < lines.length;
        }

        /** Words of the next line that is not blank, whose first must be one of {@code expected}. */
        private String[] next(String... expected) {
            if (!more()) {
                throw fault(
                        ", line " + lines.length,
                        "the file ends where '" + String.join("' or '", expected)
                                + "' is expected: it is cut short; export it again");
            }
            String[] words = lines[line].strip().toLowerCase(Locale.ROOT).split("\\s+");
            line++;
            for (String word : expected) {
                if (words[0].equals(word)) {
                    return words;
                }
            }
            throw fault(
                    ", line " + line,
                    "found '" + shortened(lines[line - 1].strip()) + "'; expected '" + String.join("' or '", expected)
                            + "'");
        }

        private Vec3 vertex() {
            String[] words = next("vertex");
            if (words.length != 4) {
                throw fault(
                        ", line " + line,
                        "'vertex' has " + (words.length - 1) + " numbers; expected 3, such as 'vertex 1.5 0 20'");
            }
            return new Vec3(number(words[1]) * unit, number(words[2]) * unit, number(words[3]) * unit);
        }

        private double number(String word) {
            double value;
            try {
                value = Double.parseDouble(word);
            } catch (NumberFormatException e) {
                throw fault(", line " + line, "'" + shortened(word) + "' is not a number");
            }
            if (!Double.isFinite(value)) {
                throw fault(", line " + line, "the coordinate '" + word + "' is not a finite number");
            }
            return value;
        }

        private static String shortened(String text) {
            return text.length() <= 40 ? text : text.substring(0, 40) + "...";
        }
    }
}
