package gripwright.shape;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ShapeAllocationTest {
    static Stream<Shape> shapes() {
        return Stream.concat(Solids.all().map(Solids::shape), Stream.of(Mesh.of(Meshes.box(0.03, 0.02, 0.04), 50_000)));
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void distanceAndDerivativesAllocateNothing(Shape shape) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        double[] points = new SplittableRandom(7).doubles(3000, -0.07, 0.07).toArray();
        double[] g = new double[3];
        double[] h = new double[6];
        double sum = run(shape, points, g, h);
        long before = threads.getCurrentThreadAllocatedBytes();
        int rounds = 20;
        for (int i = 0; i < rounds; i++) {
            sum += run(shape, points, g, h);
        }
        long bytes = threads.getCurrentThreadAllocatedBytes() - before;
        assertThat(sum).isFinite();
        assertThat((double) bytes / (rounds * points.length / 3))
                .as("bytes per call")
                .isLessThan(1);
    }

    private static double run(Shape shape, double[] points, double[] g, double[] h) {
        double sum = 0;
        for (int i = 0; i < points.length; i += 3) {
            sum += shape.distance(points[i], points[i + 1], points[i + 2]);
            shape.derivatives(points[i], points[i + 1], points[i + 2], g, h);
            sum += g[0] + h[5];
        }
        return sum;
    }
}
