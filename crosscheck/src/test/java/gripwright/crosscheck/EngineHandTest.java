package gripwright.crosscheck;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.EngineClosing;
import gripwright.truth.Truth;
import java.util.Arrays;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Three fingers close on a free object: this program against the rigid-body engine ode4j, both run here.
 *
 * <p>Source: org.ode4j:core 0.5.3 at 0.5 ms, quick solver with 100 sweeps. Worked outside: inertia, time stepping, the
 * engine's own collision search. Units: degrees, N, m. Where the two differ, they differ by what they model:
 *
 * <ul>
 *   <li>links: smooth capsules there; here, with friction, chains of beads 2 mm apart, and one bead per link without;
 *   <li>friction: there a four-sided pyramid of the normal force of the step, regularised, so that held objects creep;
 *       here Coulomb's cone with an anchor and a shear spring;
 *   <li>contact: there one or two points found by the collision search; here every bead that is in, so the pressure
 *       spreads along a link and small forces move from one link to the next;
 *   <li>inertia: there a snap overshoots; here it does not.
 * </ul>
 */
class EngineHandTest {
    private static final double STEP = 5e-4;
    private static final int SWEEPS = 100;
    private static final String SOURCE = "rigid-body engine ode4j 0.5.3, run beside";
    private static final String FRICTION = "ode4j beside us, friction";
    private static final String SMOOTH = "ode4j beside us, frictionless";
    /** Weights here are by the standard value, the file's by 9.81 [m/s^2]. */
    private static final double STANDARD_GRAVITY = 9.80665;
    /** A link that presses by more than this in one must touch in the other [N]. */
    private static final double LOADED = 2;

    static Stream<String> frictionless() {
        return EngineClosing.names(false);
    }

    static Stream<String> withFriction() {
        return EngineClosing.names(true);
    }

    @ParameterizedTest
    @MethodSource("frictionless")
    void referenceFrictionlessClosingsAgree(String name) {
        EngineClosing.End there = new OdeHand(name, STEP, OdeHand.Solver.QUICK, SWEEPS).close();
        EngineClosing.End here = EngineClosing.smooth(name);
        assertThat(here.held()).isEqualTo(there.held()).isTrue();
        for (int j = 0; j < 6; j++) {
            double expected = Math.toDegrees(there.angles()[j]);
            double found = Math.toDegrees(here.angles()[j]);
            String what = name + ", joint " + (j + 1) + " [deg]";
            Truth.record(
                    SMOOTH,
                    what,
                    EngineClosing.inputs(name),
                    SOURCE,
                    expected,
                    found,
                    "0.07",
                    "contact toe; a slide without friction is soft");
            assertThat(found).as(what).isCloseTo(expected, Offset.offset(0.07));
        }
        for (int b = 0; b < there.forces().length; b++) {
            String what = name + ", " + EngineClosing.BODIES.get(b).replace("_N", " [N]");
            Truth.record(
                    SMOOTH,
                    what,
                    EngineClosing.inputs(name),
                    SOURCE,
                    there.forces()[b],
                    here.forces()[b],
                    "0.03",
                    "contact toe; a slide without friction is soft");
            assertThat(here.forces()[b]).as(what).isCloseTo(there.forces()[b], Offset.offset(0.03));
        }
    }

    @ParameterizedTest
    @MethodSource("withFriction")
    void referenceClosingsWithFrictionAgreeWhereTheModelsDo(String name) {
        EngineClosing.End there = new OdeHand(name, STEP, OdeHand.Solver.QUICK, SWEEPS).close();
        EngineClosing.End here = EngineClosing.beads(name);
        Truth.record(
                FRICTION,
                name + ", held (1) or not (0)",
                EngineClosing.inputs(name),
                SOURCE,
                there.held() ? 1 : 0,
                here.held() ? 1 : 0,
                "equal",
                "yes or no");
        assertThat(here.held()).isEqualTo(there.held());
        if (!there.held()) {
            return;
        }
        double weight = EngineClosing.DATA.get("gravity").asDouble()
                * EngineClosing.named(name).get("object_mass_kg").asDouble();
        balance(name, "ode4j", weight, there, 0.03, "sweeps end before the engine's balance does");
        balance(name, "here", weight * STANDARD_GRAVITY / 9.81, here, 1e-4, "solved to 1e-6 N, at rest to 1.2e-5 N");
        // the sphere between unequal fingers rolls on the way: friction's limit is a pyramid there, a cone here
        double band = name.equals("sphere70-side-double") ? 7 : 3.5;
        double worst = 0;
        for (int j = 0; j < 6; j++) {
            double apart = Math.toDegrees(here.angles()[j] - there.angles()[j]);
            worst = Math.max(worst, Math.abs(apart));
            assertThat(Math.abs(apart)).as(name + " joint " + (j + 1)).isLessThan(band);
        }
        Truth.record(
                FRICTION,
                name + ", joint farthest apart [deg]",
                EngineClosing.inputs(name),
                SOURCE,
                0,
                worst,
                "" + band,
                "stick and slip on the way: the three engines of engine_case.json differ by up to 4");
        int unlike = 0;
        for (int b = 0; b < there.forces().length; b++) {
            String what = name + ", " + EngineClosing.BODIES.get(b);
            boolean touchesHere = here.forces()[b] > 0;
            boolean touchesThere = there.forces()[b] > 0;
            unlike += touchesHere != touchesThere ? 1 : 0;
            if (Math.max(here.forces()[b], there.forces()[b]) > LOADED) {
                assertThat(touchesHere).as(what + " touches").isEqualTo(touchesThere);
            }
        }
        Truth.record(
                FRICTION,
                name + ", links that touch in one only",
                EngineClosing.inputs(name),
                SOURCE,
                0,
                unlike,
                "2, each under 2 N",
                "the engines themselves differ by two: light contacts come and go");
        assertThat(unlike).as(name + " links that touch in one only").isLessThanOrEqualTo(2);
        double squeezeThere = Arrays.stream(there.forces()).sum();
        double squeezeHere = Arrays.stream(here.forces()).sum();
        Truth.record(
                FRICTION,
                name + ", sum of normal forces [N]",
                EngineClosing.inputs(name),
                SOURCE,
                squeezeThere,
                squeezeHere,
                "35 %",
                "friction carries part of the squeeze, by the way it came");
        assertThat(squeezeHere).isBetween(0.65 * squeezeThere, 1.35 * squeezeThere);
    }

    private static void balance(
            String name, String who, double weight, EngineClosing.End end, double tolerance, String why) {
        double up = end.handForce().z();
        Truth.record(
                FRICTION,
                name + ", upward force of the hand, " + who + " [N]",
                EngineClosing.inputs(name),
                "weight",
                weight,
                up,
                "" + tolerance,
                why);
        assertThat(up).as(name + " " + who).isCloseTo(weight, Offset.offset(tolerance));
    }
}
