package gripwright.closing;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * How far a body has turned about an axis. Source: every rotation is a twist about an axis after a swing about a line
 * across it, in one way below half a turn (swing-twist decomposition, from memory); both are chosen here. Units: rad.
 * Tolerance: 1e-12. Valid while the swing is below half a turn.
 */
class InHandTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void referenceTwistIsFoundWhateverTheSwing(long seed) {
        Random random = new Random(seed);
        Vec3 axis = direction(random);
        Vec3 across = axis.cross(direction(random)).unit();
        double twist = 3 * (2 * random.nextDouble() - 1);
        Rotation turn = Rotation.about(axis, twist);
        Rotation swing = Rotation.about(across, 1.5 * random.nextDouble());
        assertThat(InHand.twist(turn.times(swing), axis)).isCloseTo(twist, Offset.offset(1e-12));
        assertThat(InHand.twist(swing.times(turn), axis)).isCloseTo(twist, Offset.offset(1e-12));
        assertThat(InHand.twist(swing, axis)).isCloseTo(0, Offset.offset(1e-12));
    }

    private static Vec3 direction(Random random) {
        return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
    }
}
