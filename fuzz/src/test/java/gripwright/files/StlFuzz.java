package gripwright.files;

import com.code_intelligence.jazzer.junit.FuzzTest;
import gripwright.fuzz.Limit;
import gripwright.shape.Triangle;
import java.util.List;

/** Any bytes are a list of triangles or are refused with a reason. */
class StlFuzz {
    @FuzzTest
    void anyBytesAreReadOrRefused(byte[] bytes) {
        Limit.hold(() -> read(bytes));
    }

    private static void read(byte[] bytes) {
        try {
            List<Triangle> triangles = StlReader.read(bytes, "part.stl", 0.001);
            if (triangles.size() > StlReader.MOST_TRIANGLES) {
                throw new AssertionError("more triangles than allowed: " + triangles.size());
            }
        } catch (IllegalArgumentException refused) {
            if (!String.valueOf(refused.getMessage()).contains("part.stl")) {
                throw new AssertionError("refused without the file's name", refused);
            }
        }
    }
}
