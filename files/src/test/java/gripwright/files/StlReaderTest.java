package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import gripwright.math.Vec3;
import gripwright.shape.Mesh;
import gripwright.shape.Triangle;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StlReaderTest {
    /** A tetrahedron with its right angle at the origin and edges of 30 mm: volume 30^3/6 = 4500 mm^3. */
    private static final float[][] CORNERS = {{0, 0, 0}, {30, 0, 0}, {0, 30, 0}, {0, 0, 30}};

    private static final int[][] FACES = {{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}};

    private static byte[] binary(String header) {
        ByteBuffer out = ByteBuffer.allocate(84 + 50 * 4).order(ByteOrder.LITTLE_ENDIAN);
        out.put(Arrays.copyOf(header.getBytes(StandardCharsets.US_ASCII), 80)).putInt(4);
        for (int[] face : FACES) {
            out.putFloat(0).putFloat(0).putFloat(0);
            for (int corner : face) {
                for (float v : CORNERS[corner]) {
                    out.putFloat(v);
                }
            }
            out.putShort((short) 0);
        }
        return out.array();
    }

    private static String text() {
        StringBuilder out = new StringBuilder("solid wedge\n");
        for (int[] face : FACES) {
            out.append("  facet normal 0 0 0\n    outer loop\n");
            for (int corner : face) {
                float[] c = CORNERS[corner];
                out.append("      vertex " + c[0] + " " + c[1] + " " + c[2] + "\n");
            }
            out.append("    endloop\n  endfacet\n");
        }
        return out.append("endsolid wedge\n").toString();
    }

    private static List<Triangle> parse(String text) {
        return StlReader.read(text.getBytes(StandardCharsets.US_ASCII), "part.stl", 1e-3);
    }

    private static List<Triangle> parse(byte[] bytes) {
        return StlReader.read(bytes, "part.stl", 1e-3);
    }

    @Test
    void textAndBinaryGiveTheSameSolid(@TempDir Path dir) throws IOException {
        Path file = Files.write(dir.resolve("wedge.stl"), binary("made by hand"));
        List<Triangle> triangles = StlReader.read(file, 1e-3);
        assertThat(triangles).isEqualTo(parse(text()));
        Mesh mesh = Mesh.of(triangles, 20_000);
        assertThat(mesh.volume()).isCloseTo(4.5e-6, withinPercentage(1e-6));
        assertThat(mesh.centroid().minus(new Vec3(7.5e-3, 7.5e-3, 7.5e-3)).length())
                .isCloseTo(0, within(1e-9));
    }

    @Test
    void aBinaryFileThatBeginsWithSolidIsReadAsBinary() {
        assertThat(parse(binary("solid from some program"))).hasSize(4);
    }

    @Test
    void textWithWindowsLinesCapitalsAndTwoSolidsIsRead() {
        String twice =
                (text() + "\n" + text()).toUpperCase(java.util.Locale.ROOT).replace("\n", "\r\n");
        assertThat(parse(twice)).hasSize(8);
    }

    @Test
    void aBinaryFileCutShortIsRefused() {
        byte[] cut = Arrays.copyOf(binary("made by hand"), 200);
        assertThatThrownBy(() -> parse(cut))
                .hasMessage(
                        "part.stl, byte 80: the count says 4 triangles, which takes 284 bytes, but the file has 200:"
                                + " the file is cut short or not STL; export it again");
        byte[] solid = Arrays.copyOf(binary("solid"), 200);
        assertThatThrownBy(() -> parse(solid)).hasMessageContaining("cut short");
    }

    @Test
    void bytesAfterTheLastTriangleAreRefused() {
        byte[] longer = Arrays.copyOf(binary("made by hand"), 300);
        assertThatThrownBy(() -> parse(longer)).hasMessageContaining("something after the last triangle");
    }

    @Test
    void aHugeCountIsRefusedWithoutReservingMemory() {
        byte[] huge = binary("made by hand");
        ByteBuffer.wrap(huge).order(ByteOrder.LITTLE_ENDIAN).putInt(80, -1);
        assertThatThrownBy(() -> parse(huge)).hasMessageContaining("the count says 4294967295 triangles");
    }

    @Test
    void notANumberIsRefusedWithItsByteOrLine() {
        byte[] bad = binary("made by hand");
        ByteBuffer.wrap(bad).order(ByteOrder.LITTLE_ENDIAN).putFloat(84 + 50 + 12 + 8, Float.NaN);
        assertThatThrownBy(() -> parse(bad))
                .hasMessageContaining("part.stl, byte 154: a coordinate of triangle 2 is NaN");
        assertThatThrownBy(() -> parse(text().replaceFirst("vertex 30.0", "vertex nan")))
                .hasMessageContaining("part.stl, line 6: 'nan' is not a number");
        assertThatThrownBy(() -> parse(text().replaceFirst("vertex 30.0", "vertex 1e999")))
                .hasMessageContaining("line 6: the coordinate '1e999' is not a finite number");
    }

    @Test
    void damagedTextIsRefusedWithItsLine() {
        assertThatThrownBy(() -> parse(text().replaceFirst("vertex 30.0", "vertex")))
                .hasMessageContaining("part.stl, line 6: 'vertex' has 2 numbers; expected 3");
        assertThatThrownBy(() -> parse(text().replaceFirst("endloop", "end loop")))
                .hasMessageContaining("part.stl, line 7: found 'end loop'; expected 'endloop'");
        String text = text();
        assertThatThrownBy(() -> parse(text.substring(0, text.indexOf("endsolid"))))
                .hasMessageContaining("the file ends where 'facet' or 'endsolid' is expected: it is cut short");
    }

    @Test
    void whatIsNotStlIsRefused() {
        assertThatThrownBy(() -> parse("")).hasMessageContaining("part.stl: the file is empty");
        assertThatThrownBy(() -> parse("hello")).hasMessageContaining("it has 5 bytes");
        assertThatThrownBy(() -> parse("solid a\nendsolid a\n")).hasMessageContaining("no triangles");
        assertThatThrownBy(() -> parse(new byte[84])).hasMessageContaining("no triangles");
    }

    @Test
    void aFileTooLargeIsRefusedBeforeItIsRead(@TempDir Path dir) throws IOException {
        Path file = dir.resolve("big.stl");
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(StlReader.MOST_BYTES + 1);
        }
        assertThatThrownBy(() -> StlReader.read(file, 1e-3))
                .hasMessageContaining("big.stl: the file has 50000001 bytes; at most 50000000");
    }
}
