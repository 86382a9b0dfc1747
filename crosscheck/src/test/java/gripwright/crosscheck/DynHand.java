package gripwright.crosscheck;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.dyn4j.collision.CategoryFilter;
import org.dyn4j.dynamics.Body;
import org.dyn4j.dynamics.BodyFixture;
import org.dyn4j.dynamics.contact.SolvedContact;
import org.dyn4j.dynamics.joint.RevoluteJoint;
import org.dyn4j.geometry.Capsule;
import org.dyn4j.geometry.Circle;
import org.dyn4j.geometry.Convex;
import org.dyn4j.geometry.Mass;
import org.dyn4j.geometry.MassType;
import org.dyn4j.geometry.Rectangle;
import org.dyn4j.geometry.Vector2;
import org.dyn4j.world.ContactCollisionData;
import org.dyn4j.world.World;
import org.dyn4j.world.listener.ContactListenerAdapter;
import tools.jackson.databind.JsonNode;

/**
 * A case of planar_cases.json on the planar rigid-body engine dyn4j: two fingers of capsules with mass on pins, hard
 * contacts solved by impulses. The engine is tuned for bodies of about its unit, so lengths are in centimetres here;
 * forces and moments grow by 100 and 10,000. Link masses and damping are invented: the state of rest has none.
 */
final class DynHand {
    private static final double CM = 100;
    private static final double STEP = 2e-4;
    private static final double RAMP = 0.3;
    private static final double SETTLE = 2.7;
    /** Forces are means over this last part of the run [s]: an impulse solver's contacts chatter. */
    private static final double MEAN_OVER = 0.1;

    private static final double[] MASS = {0.03, 0.02};
    private static final double[] DAMPING = {0.01, 0.005};
    private static final long PALM = 1;
    private static final long LINK = 2;
    private static final long DISC = 4;

    /** @param angles [rad], left proximal, left distal, right proximal, right distal; forces [N], palm first */
    record End(double[] angles, double[] forces, double x, double y, double speed) {}

    private record Pin(Body before, Body link, double sign, double rate, double damping, double rest, double arm) {
        double angle() {
            double turn = link.getTransform().getRotationAngle()
                    - before.getTransform().getRotationAngle();
            return Math.IEEEremainder(
                    sign * turn + (before.getMass().isInfinite() && sign < 0 ? Math.PI : 0), 2 * Math.PI);
        }

        double speed() {
            return sign * (link.getAngularVelocity() - before.getAngularVelocity());
        }
    }

    private final World<Body> world = new World<>();
    private final List<Pin> pins = new ArrayList<>();
    private final Map<Body, Integer> index = new HashMap<>();
    private final Body disc = new Body();
    private final double[] impulses = new double[5];
    private final double tension;

    DynHand(JsonNode hand, JsonNode scene) {
        world.setGravity(0, 0);
        world.getSettings().setLinearTolerance(1e-4);
        world.getSettings().setAngularTolerance(1e-6);
        world.getSettings().setVelocityConstraintSolverIterations(60);
        world.getSettings().setPositionConstraintSolverIterations(60);
        world.getSettings().setAtRestDetectionEnabled(false);
        tension = scene.get("tension_N").asDouble();
        Body palm = new Body();
        fixture(palm, new Rectangle(40, 2), PALM, DISC);
        palm.translate(0, -1);
        palm.setMass(MassType.INFINITE);
        add(palm, 0);
        double radius = scene.get("R_m").asDouble() * CM;
        fixture(disc, new Circle(radius), DISC, PALM | LINK);
        boolean free = scene.get("disc").asString().equals("free");
        disc.setMass(free ? new Mass(new Vector2(), 0.1, 0.05 * radius * radius) : new Mass());
        if (!free) {
            disc.setMass(MassType.INFINITE);
        }
        disc.setLinearDamping(4);
        disc.translate(scene.get("dx_m").asDouble() * CM, scene.get("dy_m").asDouble() * CM);
        add(disc, -1);
        double factor = scene.get("right_finger_arm_factor").asDouble();
        for (int side = 0; side < 2; side++) {
            finger(hand, scene, palm, side == 0 ? -1 : 1, side == 0 ? 1 : factor);
        }
        world.addContactListener(new ContactListenerAdapter<>() {
            @Override
            public void postSolve(ContactCollisionData<Body> data, SolvedContact contact) {
                Body other = data.getBody1() == disc ? data.getBody2() : data.getBody1();
                Integer i = index.get(other);
                if (i != null && i >= 0) {
                    impulses[i] += contact.getNormalImpulse();
                }
            }
        });
    }

    private void finger(JsonNode hand, JsonNode scene, Body palm, int side, double armFactor) {
        double radius = hand.get("link_radius_m").asDouble() * CM;
        Vector2 start = new Vector2(side * hand.get("half_spacing_m").asDouble() * CM, 0);
        double turn = 0;
        Body before = palm;
        for (int i = 0; i < 2; i++) {
            double rest = Math.toRadians(hand.get("rest_deg").get(i).asDouble());
            double length = hand.get("link_length_m").get(i).asDouble() * CM;
            double rate = hand.get("k1_Nm_per_rad").asDouble()
                    * (i == 0 ? 1 : scene.get("k2_over_k1").asDouble());
            double arm = hand.get("r1_m").asDouble()
                    * armFactor
                    * (i == 0 ? 1 : scene.get("r2_over_r1").asDouble());
            turn += rest;
            double direction = side > 0 ? turn : Math.PI - turn;
            Body link = new Body();
            fixture(link, new Capsule(length + 2 * radius, 2 * radius), LINK, DISC);
            link.setMass(new Mass(new Vector2(), MASS[i], MASS[i] * length * length / 12));
            link.rotate(direction);
            Vector2 along = new Vector2(Math.cos(direction), Math.sin(direction));
            link.translate(start.x + along.x * length / 2, start.y + along.y * length / 2);
            add(link, side < 0 ? 1 + i : 3 + i);
            world.addJoint(new RevoluteJoint<>(before, link, start.copy()));
            pins.add(new Pin(before, link, side, rate, DAMPING[i], rest, arm));
            start.add(along.x * length, along.y * length);
            before = link;
        }
    }

    private static void fixture(Body body, Convex shape, long is, long meets) {
        BodyFixture fixture = body.addFixture(shape);
        fixture.setFriction(0);
        fixture.setRestitution(0);
        fixture.setFilter(new CategoryFilter(is, meets));
    }

    private void add(Body body, int number) {
        index.put(body, number);
        world.addBody(body);
    }

    End close() {
        int steps = (int) Math.round((RAMP + SETTLE) / STEP);
        int mean = (int) Math.round(MEAN_OVER / STEP);
        for (int n = 1; n <= steps; n++) {
            if (n == steps - mean + 1) {
                Arrays.fill(impulses, 0);
            }
            double pull = tension * Math.min(1, n * STEP / RAMP);
            for (Pin pin : pins) {
                double moment = pull * pin.arm - pin.rate * (pin.angle() - pin.rest) - pin.damping * pin.speed();
                double torque = pin.sign * moment * CM * CM;
                pin.link.applyTorque(torque);
                pin.before.applyTorque(-torque);
            }
            world.step(1, STEP);
        }
        double[] forces = Arrays.stream(impulses)
                .map(impulse -> impulse / (mean * STEP) / CM)
                .toArray();
        double[] angles = pins.stream().mapToDouble(Pin::angle).toArray();
        Vector2 at = disc.getWorldCenter();
        return new End(
                angles, forces, at.x / CM, at.y / CM, disc.getLinearVelocity().getMagnitude() / CM);
    }
}
