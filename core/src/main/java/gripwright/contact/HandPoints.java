package gripwright.contact;

import gripwright.contact.PadPoints.Point;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.PadLayer;
import gripwright.model.Palm;
import gripwright.model.Phalanx;
import java.util.ArrayList;
import java.util.List;

/** Lays pad points and bone points over a hand. */
public final class HandPoints {
    /** Stiffness of a bone point [N/m]: a printed bone gives about 0.1 mm under 10 N (common practice, no source). */
    private static final double BONE_STIFFNESS = 1e5;

    private static final double BONE_SHEAR = 3e4;

    private HandPoints() {}

    /**
     * Points of every body: the palm, then the phalanges finger by finger, proximal first.
     *
     * @param along pad points along a phalanx
     * @param across pad points across it
     */
    public static PadPoints of(Hand hand, int along, int across) {
        PadPoints.Builder out = new PadPoints.Builder();
        palm(hand.palm(), along, across, out.body());
        for (Finger finger : hand.fingers()) {
            for (Phalanx phalanx : finger.phalanges()) {
                out.body();
                pad(phalanx, along, across, out);
                bone(phalanx, out);
            }
        }
        return out.build();
    }

    private static Point padPoint(PadLayer layer, Vec3 place, Vec3 normal, double area) {
        return new Point(
                place,
                normal,
                0,
                layer.normalBedding() * area,
                layer.shearBedding() * area,
                area,
                layer.rubber().name());
    }

    /** Phalanx frame: x along the phalanx, y out of the pad, z the joint axis. */
    private static void pad(Phalanx phalanx, int along, int across, PadPoints.Builder out) {
        PadLayer layer = phalanx.pad();
        double height = phalanx.padHeight();
        boolean round = phalanx.tip() == Phalanx.Tip.ROUND;
        double start = Math.max(0, (phalanx.length() - layer.length()) / 2);
        double end = round ? phalanx.length() : start + layer.length();
        double dx = (end - start) / along;
        double dz = phalanx.width() / across;
        for (int i = 0; i < along; i++) {
            List<Point> row = new ArrayList<>();
            for (int k = 0; k < across; k++) {
                Vec3 place = new Vec3(start + (i + 0.5) * dx, height, -phalanx.width() / 2 + (k + 0.5) * dz);
                row.add(padPoint(layer, place, Vec3.Y, dx * dz));
            }
            out.row(row);
        }
        if (round) {
            roundTip(phalanx, height, dx, dz, across, out);
        }
    }

    /** A quarter turn of the pad round the end, with about the same pitch as along the phalanx. */
    private static void roundTip(
            Phalanx phalanx, double height, double pitch, double dz, int across, PadPoints.Builder out) {
        int rows = Math.max(2, (int) Math.round(height * Math.PI / 2 / pitch));
        double step = Math.PI / 2 / rows;
        for (int i = 0; i < rows; i++) {
            double angle = (i + 0.5) * step;
            Vec3 normal = new Vec3(StrictMath.sin(angle), StrictMath.cos(angle), 0);
            List<Point> row = new ArrayList<>();
            for (int k = 0; k < across; k++) {
                Vec3 place = new Vec3(
                        phalanx.length() + height * normal.x(),
                        height * normal.y(),
                        -phalanx.width() / 2 + (k + 0.5) * dz);
                row.add(padPoint(phalanx.pad(), place, normal, height * step * dz));
            }
            out.row(row);
        }
    }

    /** Spheres as thick as the bone, close enough that nothing slips between them. */
    private static void bone(Phalanx phalanx, PadPoints.Builder out) {
        double radius = phalanx.bone() / 2;
        double side = Math.max(0, phalanx.width() / 2 - radius);
        int along = Math.max(2, (int) Math.ceil(phalanx.length() / phalanx.bone()) + 1);
        int across = side == 0 ? 1 : Math.max(2, (int) Math.ceil(2 * side / (2 * phalanx.bone())) + 1);
        for (int i = 0; i < along; i++) {
            List<Point> row = new ArrayList<>();
            for (int k = 0; k < across; k++) {
                double z = across == 1 ? 0 : -side + 2 * side * k / (across - 1);
                Vec3 place = new Vec3(phalanx.length() * i / (along - 1.0), 0, z);
                row.add(new Point(place, Vec3.Y, radius, BONE_STIFFNESS, BONE_SHEAR, 0, PadPoints.BONE));
            }
            out.row(row);
        }
    }

    /** Hand frame: the pad's front surface is z = 0. */
    private static void palm(Palm palm, int along, int across, PadPoints.Builder out) {
        PadLayer layer = palm.pad();
        int columns = 2 * across;
        double dx = layer.length() / along;
        double dy = palm.sizeY() / columns;
        for (int i = 0; i < along; i++) {
            List<Point> row = new ArrayList<>();
            for (int k = 0; k < columns; k++) {
                Vec3 place = new Vec3(-layer.length() / 2 + (i + 0.5) * dx, -palm.sizeY() / 2 + (k + 0.5) * dy, 0);
                row.add(padPoint(layer, place, Vec3.Z, dx * dy));
            }
            out.row(row);
        }
        double radius = palm.bone() / 2;
        double sideX = Math.max(0, palm.sizeX() / 2 - radius);
        double sideY = Math.max(0, palm.sizeY() / 2 - radius);
        int nx = 2 + (int) Math.ceil(2 * sideX / (2 * palm.bone()));
        int ny = 2 + (int) Math.ceil(2 * sideY / (2 * palm.bone()));
        for (int i = 0; i < nx; i++) {
            List<Point> row = new ArrayList<>();
            for (int k = 0; k < ny; k++) {
                Vec3 place = new Vec3(
                        -sideX + 2 * sideX * i / (nx - 1.0),
                        -sideY + 2 * sideY * k / (ny - 1.0),
                        -layer.thickness() - radius);
                row.add(new Point(place, Vec3.Z, radius, BONE_STIFFNESS, BONE_SHEAR, 0, PadPoints.BONE));
            }
            out.row(row);
        }
    }
}
