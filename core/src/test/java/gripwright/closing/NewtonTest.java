package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Vec3;
import gripwright.model.Spread;
import gripwright.shape.Cylinder;
import gripwright.shape.Sphere;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A solve never says that it converged while forces are out of balance. */
class NewtonTest {
    /**
     * Source: Hooke's law, worked by hand. A far end 1 m away on 20 N/m pulls with 20 N; an iteration moves nothing by
     * more than 5 mm, so after the 15 it may take it still pulls with more than 18 N.
     */
    @Test
    void referenceFarFromBalanceTheSolveFails() {
        StepSystem s = new StepSystem(Rig.empty(), new Sphere(0.03));
        s.tableThere = false;
        s.object.mass = 1e-9;
        s.object.pull = new PullSpring(s.object, Vec3.X, 20, s.p, s.r);
        s.object.pull.farEnd(1);
        s.commit();
        Newton newton = new Newton(s);
        assertThat(newton.solve(1e-4, () -> false)).isEqualTo(Newton.End.FAILED);
        assertThat(newton.residual).isBetween(18.0, 20.0);
    }

    /** For any tolerance down to rounding: converged means balanced to ten times that, measured anew. */
    @Test
    void propertyConvergedMeansBalanced() {
        ClosingSimulator sim = new ClosingSimulator(
                BenchHands.threeFinger(),
                BenchHands.above(0.03),
                BenchHands.object("object", new Cylinder(0.03, 0.05, 0.003), 0.1),
                Spread.exactly(0.4),
                Numerics.DEFAULT.withPadPoints(7, 3),
                Criteria.DEFAULT);
        assertThat(sim.run(Conditions.NOMINAL).outcome()).isEqualTo(Outcome.HELD);
        StepSystem s = sim.system;
        Random random = new Random(5);
        int converged = 0;
        int failed = 0;
        for (int trial = 0; trial < 60; trial++) {
            double tolerance = Math.pow(10, -2 - 15 * random.nextDouble());
            s.restore();
            s.stepTime = 0.01;
            for (int j = 0; j < s.joints; j++) {
                s.q[j] += 3e-3 * random.nextGaussian();
            }
            for (int i = 0; i < 3; i++) {
                s.p[i] += 3e-4 * random.nextGaussian();
            }
            Newton.End end = new Newton(s).solve(tolerance, () -> false);
            s.evaluate(false);
            if (end == Newton.End.CONVERGED) {
                converged++;
                assertThat(s.residual())
                        .as("seed 5, trial " + trial + ", to " + tolerance + " N")
                        .isLessThan(10 * tolerance);
            } else {
                failed++;
            }
        }
        assertThat(converged).isPositive();
        assertThat(failed).as("rounding stops the finest").isPositive();
        s.restore();
    }
}
