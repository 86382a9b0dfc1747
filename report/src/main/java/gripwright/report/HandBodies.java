package gripwright.report;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.Palm;
import gripwright.model.Phalanx;
import java.util.ArrayList;
import java.util.List;

/** The solids of a hand in given poses. */
final class HandBodies {
    /** Pieces of a quarter turn or more in large pictures, and in small ones. */
    static final int FINE = 8;

    static final int COARSE = 4;

    private HandBodies() {}

    /** One body: its bone, its pad, and the way the pad faces in the world. */
    record Body(Solid bone, Solid pad, Vec3 padNormal, boolean palm) {
        Vec3 middle() {
            return bone.middle();
        }

        /** What lies behind is drawn first. */
        void draw(Svg svg, View.Scaled view) {
            boolean padInFront = padNormal.dot(view.view().near) > 0.02;
            if (!padInFront) {
                pad.draw(svg, view, false);
            }
            bone.draw(svg, view, true);
            if (padInFront) {
                pad.draw(svg, view, false);
            }
        }
    }

    /** @param poses in the order of {@link gripwright.closing.Frame#bodies()} */
    static List<Body> of(Hand hand, List<Pose> poses, int pieces) {
        List<Body> out = new ArrayList<>();
        out.add(palm(hand.palm(), poses.get(0)));
        int i = 1;
        for (Finger finger : hand.fingers()) {
            for (Phalanx phalanx : finger.phalanges()) {
                out.add(phalanx(phalanx, poses.get(i), pieces));
                i++;
            }
        }
        return out;
    }

    private static Body palm(Palm palm, Pose pose) {
        // The profile plane is the hand's x-z plane, so the prism's own axes are x, z and -y.
        Pose turned =
                new Pose(pose.position(), pose.rotation().times(Rotation.ofColumns(Vec3.X, Vec3.Z, Vec3.Y.times(-1))));
        double t = palm.pad().thickness();
        double half = palm.sizeY() / 2;
        Solid bone = Solid.prism(turned, box(-palm.sizeX() / 2, palm.sizeX() / 2, -t - palm.bone(), -t), half, "");
        Solid pad = Solid.prism(turned, box(-palm.pad().length() / 2, palm.pad().length() / 2, -t, 0), half, "rub");
        return new Body(bone, pad, pose.rotation().column(2), true);
    }

    private static Body phalanx(Phalanx p, Pose pose, int pieces) {
        double r = p.bone() / 2;
        double t = p.pad().thickness();
        boolean round = p.tip() == Phalanx.Tip.ROUND;
        List<Solid.Corner> bone = new ArrayList<>();
        arc(bone, 0, r, 90, 270, pieces);
        if (round) {
            arc(bone, p.length(), r, -90, 90, pieces);
        } else {
            bone.add(new Solid.Corner(p.length(), -r, true));
            bone.add(new Solid.Corner(p.length(), r, true));
        }
        double start = Math.max(0, (p.length() - p.pad().length()) / 2);
        List<Solid.Corner> pad;
        if (round) {
            pad = new ArrayList<>();
            pad.add(new Solid.Corner(start, r, true));
            arc(pad, p.length(), r, 90, 0, pieces);
            arc(pad, p.length(), r + t, 0, 90, pieces);
            pad.add(new Solid.Corner(start, r + t, true));
        } else {
            pad = box(start, start + p.pad().length(), r, r + t);
        }
        double half = p.width() / 2;
        return new Body(
                Solid.prism(pose, bone, half, ""),
                Solid.prism(pose, pad, half, "rub"),
                pose.rotation().column(1),
                false);
    }

    private static List<Solid.Corner> box(double x0, double x1, double y0, double y1) {
        return new ArrayList<>(List.of(
                new Solid.Corner(x0, y0, true),
                new Solid.Corner(x1, y0, true),
                new Solid.Corner(x1, y1, true),
                new Solid.Corner(x0, y1, true)));
    }

    /** A circular arc about (x, 0) between two angles [deg]; no edge where it runs on smoothly. */
    private static void arc(List<Solid.Corner> to, double x, double r, double from, double until, int pieces) {
        for (int i = 0; i <= pieces; i++) {
            double a = Math.toRadians(from + (until - from) * i / pieces);
            to.add(new Solid.Corner(x + r * Math.cos(a), r * Math.sin(a), false));
        }
    }
}
