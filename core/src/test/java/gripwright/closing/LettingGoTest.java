package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Pose;
import gripwright.math.Vec3;
import gripwright.model.Spread;
import gripwright.shape.Sphere;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Hands that do not let go. Slack tendons never hold a joint in this model (docs/method.md), so the held hand gets springs
 * that pull the wrong way, or a way back on which a finger takes the object along.
 */
class LettingGoTest {
    private static final double RETREAT = 0.2;
    private final ClosingSimulator sim = new ClosingSimulator(
            BenchHands.threeFinger(),
            BenchHands.above(0.07),
            BenchHands.object("ball", new Sphere(0.03), 0.1),
            Spread.exactly(0.4),
            Numerics.DEFAULT,
            Criteria.DEFAULT);

    @BeforeEach
    void held() {
        assertThat(sim.run(Conditions.NOMINAL).outcome()).isEqualTo(Outcome.HELD);
    }

    private Release release(double springs, Vec3 wayBack) {
        StepSystem s = sim.system;
        Snapshot held = Snapshot.of(s);
        Pose base = s.kinematics.pose(-1);
        s.springs.setRateFactor(springs);
        LettingGo letting =
                new LettingGo(s, new Stepper(s, Numerics.DEFAULT), Criteria.DEFAULT, List.of("left", "right", "thumb"));
        return letting.from(
                held,
                back -> s.kinematics.setBase(new Pose(base.position().plus(wayBack.times(back)), base.rotation())),
                RETREAT);
    }

    @Test
    void propertyWithItsSpringsItLetsGo() {
        Release r = release(1, Vec3.Z);
        assertThat(r.how()).isEqualTo(Release.How.LET_GO);
        assertThat(r.dragged()).isLessThan(1e-3);
        assertThat(r.letGoAt()).isLessThan(1);
    }

    /** All joints return and nothing presses; but the hand goes back sideways, where a finger is in the ball's way. */
    @Test
    void propertyAnObjectThatComesAlongHasNotBeenLetGo() {
        Release r = release(1, Vec3.X);
        assertThat(r.how()).isEqualTo(Release.How.NOT_LET_GO);
        assertThat(r.fingers()).allMatch(f -> f.tension() == 0 && f.force() < Criteria.DEFAULT.touchForce());
        assertThat(r.dragged()).isGreaterThan(Criteria.DEFAULT.pushed());
        assertThat(r.letGoAt()).as("it had left the fingers before").isLessThan(1);
    }

    /** Springs that close the fingers press on after the motors have paid out: that alone is not letting go. */
    @Test
    void propertyFingersThatStillPressHaveNotLetGo() {
        Release r = release(-1, Vec3.Z);
        assertThat(r.how()).isEqualTo(Release.How.NOT_LET_GO);
        assertThat(r.fingers()).anyMatch(f -> f.force() > Criteria.DEFAULT.touchForce());
        assertThat(r.letGoAt()).as("one never left it").isNaN();
    }
}
