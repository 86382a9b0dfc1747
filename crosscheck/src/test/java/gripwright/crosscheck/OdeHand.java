package gripwright.crosscheck;

import static org.ode4j.ode.OdeConstants.dContactApprox1;
import static org.ode4j.ode.OdeConstants.dContactSoftCFM;
import static org.ode4j.ode.OdeConstants.dContactSoftERP;

import gripwright.closing.EngineClosing;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.ode4j.math.DMatrix3;
import org.ode4j.math.DVector3C;
import org.ode4j.ode.DBody;
import org.ode4j.ode.DContact;
import org.ode4j.ode.DContactBuffer;
import org.ode4j.ode.DContactJoint;
import org.ode4j.ode.DGeom;
import org.ode4j.ode.DHingeJoint;
import org.ode4j.ode.DJoint;
import org.ode4j.ode.DJointGroup;
import org.ode4j.ode.DMass;
import org.ode4j.ode.DWorld;
import org.ode4j.ode.OdeHelper;
import tools.jackson.databind.JsonNode;

/**
 * A case of engine_case.json on the rigid-body engine ode4j: capsule links with mass on hinges, a torque for the
 * tendon, the engine's own collision search and contact solver. Joint springs are stops of no width with the engine's
 * error reduction and constraint mixing set to rate and damping, contact springs likewise, so both are integrated
 * implicitly. Nothing of this program's mechanics is used. World frame, SI. Not thread-safe.
 */
final class OdeHand {
    /** Which of the engine's solvers. */
    enum Solver {
        /** Complementarity by pivoting; its friction limits are those of the last step. */
        DIRECT,
        /** Projected relaxation. */
        QUICK
    }

    private static final JsonNode DATA = EngineClosing.DATA;
    private static final int MOST_POINTS = 8;
    /** Links of capsules of this radius [m]. */
    private static final double RADIUS = 0.008;

    private record Link(DBody body, DGeom geom, DHingeJoint hinge, double arm) {}

    /** Pads and palm have the same friction in the file. */
    private record Law(double stiffness, double damping, double friction) {}

    private final JsonNode scene;
    private final double step;
    private final Solver solver;
    private final DWorld world;
    private final DJointGroup touching = OdeHelper.createJointGroup();
    private final DContactBuffer points = new DContactBuffer(MOST_POINTS);
    private final List<Link> links = new ArrayList<>();
    private final List<DContactJoint> made = new ArrayList<>();
    private final List<Integer> madeOn = new ArrayList<>();
    private final List<DVector3C> madeNormals = new ArrayList<>();
    private final DGeom palm;
    private final DGeom table;
    private final DGeom objectGeom;
    final DBody object;
    private boolean tableThere = true;
    private boolean lastStep;
    private final Law handContact;
    private final Law tableContact;

    OdeHand(String name, double step, Solver solver, int iterations) {
        OdeHelper.initODE2(0);
        scene = EngineClosing.named(name);
        this.step = step;
        this.solver = solver;
        double scale = scene.get("mu_scale").asDouble();
        JsonNode c = DATA.get("contact");
        handContact = new Law(
                c.get("stiffness_N_per_m").asDouble(),
                c.get("damping_Ns_per_m").asDouble(),
                scale * c.get("mu_pad_object").asDouble());
        tableContact = new Law(
                c.get("table_stiffness_N_per_m").asDouble(),
                c.get("table_damping_Ns_per_m").asDouble(),
                scale * c.get("mu_object_table").asDouble());
        world = OdeHelper.createWorld();
        world.setGravity(0, 0, -DATA.get("gravity").asDouble());
        world.setCFM(1e-12);
        world.setERP(0.2);
        world.setContactMaxCorrectingVel(Double.POSITIVE_INFINITY);
        world.setAutoDisableFlag(false);
        world.setQuickStepNumIterations(iterations);
        Vec3 half = vector(DATA.get("palm").get("half_mm"));
        palm = OdeHelper.createBox(2 * half.x(), 2 * half.y(), 2 * half.z());
        place(
                palm,
                origin(),
                column(0),
                column(1),
                column(2),
                vector(DATA.get("palm").get("centre_mm")));
        table = OdeHelper.createPlane(null, 0, 0, 1, 0);
        for (int f = 0; f < 3; f++) {
            finger(
                    DATA.get("fingers").get(f),
                    scene.get("finger_strength").get(f).asDouble());
        }
        object = OdeHelper.createBody(world);
        objectGeom = object(DATA.get("objects").get(scene.get("object").asString()));
        objectGeom.setBody(object);
        Vec3 centre = vector(scene.get("object_centre_mm"));
        object.setPosition(centre.x(), centre.y(), centre.z());
    }

    private void finger(JsonNode finger, double strength) {
        Vec3 out = turned(unit(finger.get("outward")));
        Vec3 normal = column(2);
        Vec3 axis = out.cross(normal);
        Vec3 start = origin().plus(turned(vector(finger.get("base_mm"))));
        double angle = 0;
        @Nullable DBody before = null;
        for (int i = 0; i < 2; i++) {
            angle += Math.toRadians(finger.get("rest_deg").get(i).asDouble());
            Vec3 along = out.times(Math.cos(angle)).plus(normal.times(Math.sin(angle)));
            double length = finger.get("link_length_mm").get(i).asDouble() / 1e3;
            DBody body = OdeHelper.createBody(world);
            DMass mass = OdeHelper.createMass();
            mass.setCapsuleTotal(finger.get("link_mass_kg").get(i).asDouble(), 3, RADIUS, length);
            body.setMass(mass);
            body.setGravityMode(false);
            body.setFiniteRotationMode(true);
            DGeom geom = OdeHelper.createCapsule(RADIUS, length);
            geom.setBody(body);
            body.setRotation(columns(axis, along.cross(axis), along));
            Vec3 middle = start.plus(along.times(length / 2));
            body.setPosition(middle.x(), middle.y(), middle.z());
            DHingeJoint hinge = OdeHelper.createHingeJoint(world);
            hinge.attach(body, before);
            hinge.setAnchor(start.x(), start.y(), start.z());
            hinge.setAxis(axis.x(), axis.y(), axis.z());
            double rate = finger.get("spring_Nm_per_rad").get(i).asDouble() * strength;
            double damping = finger.get("damping_Nms_per_rad").get(i).asDouble() * strength;
            hinge.setParamLoStop(0);
            hinge.setParamHiStop(0);
            hinge.setParam(DJoint.PARAM_N.dParamStopERP1, step * rate / (step * rate + damping));
            hinge.setParam(DJoint.PARAM_N.dParamStopCFM1, 1 / (step * rate + damping));
            links.add(new Link(
                    body, geom, hinge, finger.get("moment_arm_mm").get(i).asDouble() / 1e3 * strength));
            before = body;
            start = start.plus(along.times(length));
        }
    }

    private DGeom object(JsonNode shape) {
        double kg = scene.get("object_mass_kg").asDouble();
        DMass mass = OdeHelper.createMass();
        DGeom geom;
        switch (shape.get("shape").asString()) {
            case "sphere" -> {
                double r = shape.get("radius_mm").asDouble() / 1e3;
                mass.setSphereTotal(kg, r);
                geom = OdeHelper.createSphere(r);
            }
            case "cylinder" -> {
                double r = shape.get("radius_mm").asDouble() / 1e3;
                double length = 2 * shape.get("half_height_mm").asDouble() / 1e3;
                mass.setCylinderTotal(kg, 3, r, length);
                geom = OdeHelper.createCylinder(r, length);
            }
            case "box" -> {
                Vec3 half = vector(shape.get("half_mm"));
                mass.setBoxTotal(kg, 2 * half.x(), 2 * half.y(), 2 * half.z());
                geom = OdeHelper.createBox(2 * half.x(), 2 * half.y(), 2 * half.z());
            }
            default -> throw new IllegalArgumentException("no shape " + shape);
        }
        object.setMass(mass);
        return geom;
    }

    /** The whole schedule of the file. */
    EngineClosing.End close() {
        JsonNode schedule = DATA.get("schedule");
        double ramp = schedule.get("ramp_s").asDouble();
        double hold = schedule.get("hold_s").asDouble();
        double tension = schedule.get("tension_N").asDouble();
        int rampSteps = (int) Math.round(ramp / step);
        int all = rampSteps + (int) Math.round(hold / step);
        double before = 0;
        for (int i = 0; i < all; i++) {
            if (i == rampSteps) {
                before = object.getPosition().get2();
                tableThere = scene.get("keep_table").asBoolean();
            }
            lastStep = i == all - 1;
            advance(tension * Math.min(1, (i + 1) * step / ramp));
        }
        return end(before - object.getPosition().get2());
    }

    private void advance(double tension) {
        touching.empty();
        touch(palm, 0, handContact);
        for (int i = 0; i < links.size(); i++) {
            touch(links.get(i).geom, 1 + i, handContact);
        }
        if (tableThere) {
            touch(table, -1, tableContact);
        }
        for (Link link : links) {
            link.hinge.addTorque(tension * link.arm);
        }
        if (solver == Solver.QUICK) {
            world.quickStep(step);
        } else {
            world.step(step);
        }
    }

    private void touch(DGeom other, int body, Law law) {
        int n = OdeHelper.collide(objectGeom, other, MOST_POINTS, points.getGeomBuffer());
        for (int i = 0; i < n; i++) {
            DContact contact = points.get(i);
            contact.surface.mode = dContactSoftERP | dContactSoftCFM | dContactApprox1;
            contact.surface.mu = law.friction;
            contact.surface.soft_erp = step * law.stiffness / (step * law.stiffness + law.damping);
            contact.surface.soft_cfm = 1 / (step * law.stiffness + law.damping);
            DContactJoint joint = OdeHelper.createContactJoint(world, touching, contact);
            joint.attach(object, other.getBody());
            if (lastStep) {
                joint.setFeedback(new DJoint.DJointFeedback());
                made.add(joint);
                madeOn.add(body);
                madeNormals.add(contact.geom.normal.clone());
            }
        }
    }

    private EngineClosing.End end(double drop) {
        double[] forces = new double[EngineClosing.BODIES.size()];
        Vec3 hand = Vec3.ZERO;
        for (int i = 0; i < made.size(); i++) {
            DJoint.DJointFeedback feedback = made.get(i).getFeedback();
            if (feedback != null && madeOn.get(i) >= 0) {
                // ode4j 0.5.3's quick solver writes the force on the first body into the second body's place
                DVector3C force = solver == Solver.QUICK ? feedback.f2 : feedback.f1;
                forces[madeOn.get(i)] += force.dot(madeNormals.get(i));
                hand = hand.plus(of(force));
            }
        }
        double[] angles = new double[links.size()];
        for (int i = 0; i < angles.length; i++) {
            JsonNode finger = DATA.get("fingers").get(i / 2);
            Vec3 along = new Vec3(
                    links.get(i).body.getRotation().get02(),
                    links.get(i).body.getRotation().get12(),
                    links.get(i).body.getRotation().get22());
            angles[i] = Math.atan2(along.dot(column(2)), along.dot(turned(unit(finger.get("outward")))));
            if (i % 2 == 1) {
                angles[i] = Math.IEEEremainder(angles[i] - angles[i - 1], 2 * Math.PI);
            }
        }
        double speed = object.getLinearVel().length();
        long touchingLinks = 0;
        for (int b = 1; b < forces.length; b++) {
            touchingLinks += forces[b] > 0 ? 1 : 0;
        }
        boolean held = drop < 0.015 && speed < 0.02 && touchingLinks >= 2;
        DVector3C p = object.getPosition();
        return new EngineClosing.End(
                angles, forces, new double[] {p.get0(), p.get1(), p.get2()}, hand, drop, held, true, "");
    }

    // ------------------------------------------------------------------ frames

    private Vec3 origin() {
        return vector(scene.get("hand_pose").get("origin_mm"));
    }

    private Vec3 column(int i) {
        JsonNode r = scene.get("hand_pose").get("R");
        return new Vec3(
                r.get(0).get(i).asDouble(),
                r.get(1).get(i).asDouble(),
                r.get(2).get(i).asDouble());
    }

    private Vec3 turned(Vec3 v) {
        return column(0)
                .times(v.x())
                .plus(column(1).times(v.y()))
                .plus(column(2).times(v.z()));
    }

    private static Vec3 unit(JsonNode v) {
        return new Vec3(v.get(0).asDouble(), v.get(1).asDouble(), v.get(2).asDouble());
    }

    private static Vec3 vector(JsonNode millimetres) {
        return unit(millimetres).times(1e-3);
    }

    private static Vec3 of(DVector3C v) {
        return new Vec3(v.get0(), v.get1(), v.get2());
    }

    private void place(DGeom geom, Vec3 at, Vec3 x, Vec3 y, Vec3 z, Vec3 offset) {
        Vec3 p = at.plus(turned(offset));
        geom.setPosition(p.x(), p.y(), p.z());
        geom.setRotation(columns(x, y, z));
    }

    private static DMatrix3 columns(Vec3 x, Vec3 y, Vec3 z) {
        return new DMatrix3(x.x(), y.x(), z.x(), x.y(), y.y(), z.y(), x.z(), y.z(), z.z());
    }
}
