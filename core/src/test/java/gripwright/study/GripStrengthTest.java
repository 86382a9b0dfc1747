package gripwright.study;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.BenchHands;
import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingSimulator;
import gripwright.closing.Conditions;
import gripwright.closing.Criteria;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Spread;
import gripwright.shape.Cylinder;
import gripwright.study.GripStrength.OfFinger;
import gripwright.study.GripStrength.Pipe;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class GripStrengthTest {
    private static final Hand HAND = BenchHands.threeFinger();
    private static final Grip GRIP = new Grip(
            "top",
            Grip.Approach.ABOVE,
            new Grip.PalmToObject(0.03, Double.NaN),
            0,
            Map.of(),
            List.of("left", "right", "thumb"));
    private static final RunnerFactory RUNNERS = (object, grip) ->
            new ClosingSimulator(HAND, grip, object, Spread.exactly(0.4), Numerics.DEFAULT, Criteria.DEFAULT);

    /** Both halves of an upright pipe carry the same across any cut: Newton's third law and balance. */
    @Test
    void propertyBothHalvesOfACutCarryTheSame() {
        ClosingDetail held = RUNNERS.create(BenchHands.object("pipe", new Cylinder(0.03, 0.05, 0.001), 0.1), GRIP)
                .detail(Conditions.NOMINAL);
        for (int i = 0; i < 6; i++) {
            double a = i * Math.PI / 6;
            double one = GripStrength.between(held, a);
            double other = GripStrength.between(held, a + Math.PI);
            assertThat(one).as("cut " + i).isCloseTo(other, Offset.offset(1e-4));
        }
        assertThat(GripStrength.between(held, 0))
                .as("across the closing direction")
                .isPositive();
    }

    @Test
    void propertyEachFingerOfTheGripIsWeighedAloneOnAPipeThatDoesNotMove() {
        GripStrength strength = new GripStrength(HAND, RUNNERS, GRIP, "plain");
        List<OfFinger> fingers = strength.fingers(Pipe.INCH_2);
        assertThat(fingers).extracting(OfFinger::finger).containsExactly("left", "right", "thumb");
        assertThat(fingers).allMatch(f -> f.force() > 0.1);
        assertThat(fingers.get(0).force())
                .as("mirror")
                .isCloseTo(
                        fingers.get(1).force(),
                        Offset.offset(1e-2 * fingers.get(1).force() + 1e-9));
        assertThat(strength.surfaces()).containsExactly("plain");
        assertThat(fingers).allMatch(f -> f.outcome() != Outcome.HELD);
    }
}
