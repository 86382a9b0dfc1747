package gripwright.bench;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.Phalanx;
import gripwright.shape.Box;
import gripwright.shape.Capsule;
import gripwright.shape.Composite;
import gripwright.shape.Cup;
import gripwright.shape.Cylinder;
import gripwright.shape.Ellipsoid;
import gripwright.shape.Mesh;
import gripwright.shape.Ring;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import gripwright.shape.Triangle;
import gripwright.shape.Tube;
import java.util.ArrayList;
import java.util.List;

/**
 * Solids for the browser's view [mm]: boxes, closed outlines in the (radius, z) plane to be turned about z, triangles.
 */
final class SolidWire {
    private static final int ARC = 10;

    private SolidWire() {}

    /** A pose as its place [mm] and the first two columns of its rotation. */
    static List<Wire.Raw> pose(Pose pose) {
        List<Wire.Raw> out = new ArrayList<>(Wire.millimetres(pose.position()));
        out.addAll(turn(pose.rotation()));
        return out;
    }

    private static List<Wire.Raw> turn(Rotation r) {
        List<Wire.Raw> out = new ArrayList<>(Wire.vector(r.column(0), 4));
        out.addAll(Wire.vector(r.column(1), 4));
        return out;
    }

    /** The parts of a shape, each with its pose. */
    static List<Wire.Raw> shape(Shape shape) {
        List<Wire.Raw> parts = new ArrayList<>();
        add(shape, Pose.IDENTITY, parts);
        return parts;
    }

    private static void add(Shape shape, Pose pose, List<Wire.Raw> to) {
        if (shape instanceof Composite composite) {
            composite.parts().forEach(part -> add(part.shape(), pose.times(part.pose()), to));
        } else if (shape instanceof Box box) {
            to.add(Wire.raw(
                    "at", pose(pose), "box", Wire.millimetres(new Vec3(box.halfX(), box.halfY(), box.halfZ()))));
        } else if (shape instanceof Mesh mesh) {
            List<Wire.Raw> corners = new ArrayList<>();
            for (Triangle t : mesh.triangles()) {
                corners.addAll(Wire.millimetres(t.a()));
                corners.addAll(Wire.millimetres(t.b()));
                corners.addAll(Wire.millimetres(t.c()));
            }
            to.add(Wire.raw("at", pose(pose), "triangles", corners));
        } else if (shape instanceof Ellipsoid e) {
            to.add(Wire.raw("at", pose(pose), "ellipsoid", Wire.millimetres(new Vec3(e.a(), e.b(), e.c()))));
        } else {
            Outline outline = outline(shape);
            to.add(Wire.raw("at", pose(pose), "turned", outline.points, "closed", outline.closed));
        }
    }

    /** Points (radius, z) one after the other from low to high, or round about. */
    private static final class Outline {
        final List<Wire.Raw> points = new ArrayList<>();
        boolean closed;

        void add(double r, double z) {
            points.add(Wire.number(1e3 * Math.max(r, 0), 2));
            points.add(Wire.number(1e3 * z, 2));
        }

        /** Part of a circle about (r, z) [degrees from the r axis]. */
        void arc(double r, double z, double radius, double from, double to, int pieces) {
            for (int i = 0; i <= pieces; i++) {
                double a = Math.toRadians(from + (to - from) * i / pieces);
                add(r + radius * Math.cos(a), z + radius * Math.sin(a));
            }
        }
    }

    private static Outline outline(Shape shape) {
        Outline out = new Outline();
        if (shape instanceof Cylinder c) {
            corners(out, c.radius(), c.radius(), c.halfHeight(), c.edge());
        } else if (shape instanceof Cup c) {
            corners(out, c.bottomRadius(), c.topRadius(), c.halfHeight(), c.edge());
        } else if (shape instanceof Tube t) {
            out.closed = true;
            out.add(t.innerRadius(), -t.halfHeight());
            out.add(t.outerRadius(), -t.halfHeight());
            out.add(t.outerRadius(), t.halfHeight());
            out.add(t.innerRadius(), t.halfHeight());
        } else if (shape instanceof Ring r) {
            out.closed = true;
            out.arc(r.ringRadius(), 0, r.tubeRadius(), 0, 360 - 360.0 / 24, 23);
        } else if (shape instanceof Capsule c) {
            out.arc(0, -c.halfLength(), c.radius(), -90, 0, ARC);
            out.arc(0, c.halfLength(), c.radius(), 0, 90, ARC);
        } else if (shape instanceof Sphere s) {
            out.arc(0, 0, s.radius(), -90, 90, 2 * ARC);
        } else {
            // A shape that the view does not know yet: a ball of its size, so that something stands there.
            out.arc(0, 0, shape.boundingRadius(), -90, 90, 2 * ARC);
        }
        return out;
    }

    private static void corners(Outline out, double bottom, double top, double half, double edge) {
        double e = edge < 5e-4 ? 0 : edge;
        out.add(0, -half);
        if (e == 0) {
            out.add(bottom, -half);
            out.add(top, half);
        } else {
            out.arc(bottom - e, -half + e, e, -90, 0, 4);
            out.arc(top - e, half - e, e, 0, 90, 4);
        }
        out.add(0, half);
    }

    /** The hand's bodies in the order of frames: bone and pad as boxes or with a round tip [mm]. */
    static List<Wire.Raw> hand(Hand hand) {
        List<Wire.Raw> out = new ArrayList<>();
        var palm = hand.palm();
        out.add(Wire.raw(
                "name",
                "palm",
                "size",
                List.of(mm(palm.sizeX()), mm(palm.sizeY()), mm(palm.bone())),
                "pad",
                List.of(mm(palm.pad().length()), mm(palm.pad().thickness()))));
        for (int f = 0; f < hand.fingers().size(); f++) {
            Finger finger = hand.fingers().get(f);
            for (int i = 0; i < finger.phalanges().size(); i++) {
                Phalanx p = finger.phalanges().get(i);
                out.add(Wire.raw(
                        "name",
                        finger.name() + " " + (i + 1),
                        "finger",
                        f,
                        "size",
                        List.of(mm(p.length()), mm(p.width()), mm(p.bone())),
                        "pad",
                        List.of(mm(p.pad().length()), mm(p.pad().thickness())),
                        "round",
                        p.tip() == Phalanx.Tip.ROUND));
            }
        }
        return out;
    }

    private static Wire.Raw mm(double metres) {
        return Wire.number(1e3 * metres, 2);
    }
}
