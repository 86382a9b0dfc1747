package gripwright.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.Joint;
import gripwright.model.Motor;
import gripwright.model.PadLayer;
import gripwright.model.Phalanx;
import gripwright.model.PinJoint;
import gripwright.model.Rubber;
import gripwright.model.Spool;
import gripwright.model.Transmission;
import gripwright.model.Transmission.Branch;
import gripwright.truth.Reference;
import gripwright.truth.Reference.Row;
import gripwright.truth.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * Tension shared by transmissions and lost in sheaths.
 *
 * <p>Source: Euler-Eytelwein, levers; reference/drive. Worked outside: by hand and with arbitrary precision. Units: N.
 * Tolerance: 1e-9 relative, closed formulas. Valid for thin flexible tendons and for pulleys without friction in their
 * pins (the rows with pin friction, motors and screws have no counterpart in the program).
 */
class DriveTest {
    private static final double CLOSE = 1e-9;

    @Test
    void referenceCapstanRatios() {
        for (Row row : rows("CAP")) {
            double wrap = Math.toRadians(row.input("phi_deg"));
            double found = 1 / Capstan.farSide(1, row.input("mu"), wrap);
            agrees(row + " " + row.inputs(), row.expected(), found);
        }
    }

    /** One finger bent by 30 (from straight out), 20 and 10 degrees, closing: each guide takes its share. */
    @Test
    void referenceTensionFallsFromJointToJoint() {
        double[] bend = {Math.toRadians(30), Math.toRadians(20), Math.toRadians(10)};
        double[] open = {Math.PI / 2 + bend[0], bend[1], bend[2]};
        TendonDrive drive = drive(List.of(3), new FingerTendon("f0"), 40, 0.2, Map.of(), open);
        drive.reset(open);
        drive.wind(0, 1);
        // every guide slides by more than its presliding distance
        double[] closed = {open[0] + 0.05, open[1] + 0.05, open[2] + 0.05};
        evaluate(drive, closed, open);
        List<Row> rows = rows("CAP3");
        for (int j = 0; j < 3; j++) {
            agrees(rows.get(j).toString(), rows.get(j).expected(), drive.jointTension(0, j));
        }
    }

    /** A sheath's wrap adds to the first bend; paying out turns the loss into a gain. */
    @Test
    void referenceSheathWrapAndDirection() {
        double[] open = {Math.PI / 2};
        TendonDrive drive = drive(List.of(1), new FingerTendon("f0"), 10, 0.1, Map.of("f0", Math.PI), open);
        drive.reset(open);
        drive.wind(0, 1);
        evaluate(drive, new double[] {open[0] + 0.1}, open);
        agrees("sheath bent by 180 deg, mu 0.1, closing", 10 / 1.36910777062485, drive.jointTension(0, 0));
        evaluate(drive, new double[] {open[0] - 0.1}, open);
        agrees("sheath bent by 180 deg, mu 0.1, paying out", 10 * 1.36910777062485, drive.jointTension(0, 0));
        evaluate(drive, open, open);
        agrees("sheath bent by 180 deg, at rest from the start", 10, drive.jointTension(0, 0));
    }

    /** A bar of 12 and 18 mm shares 30 N as 18 and 12 N. */
    @Test
    void referenceWhiffletree() {
        double[] open = {1, 1};
        TendonDrive drive = drive(
                List.of(1, 1),
                new Floating(List.of(
                        new Branch(18 / 30.0, new FingerTendon("f0")), new Branch(12 / 30.0, new FingerTendon("f1")))),
                30,
                0,
                Map.of(),
                open);
        drive.reset(open);
        drive.wind(0, 1);
        evaluate(drive, open, open);
        List<Row> rows = rows("WHF");
        agrees(rows.get(0).toString(), rows.get(0).expected(), drive.jointTension(0, 0));
        agrees(rows.get(1).toString(), rows.get(1).expected(), drive.jointTension(1, 0));
    }

    /** A pulley over two pulleys: each of four tendons gets 10 of 40 N, whatever their travels. */
    @Test
    void referenceTwoLevelPulleyTree() {
        double[] open = {1, 1, 1, 1};
        Transmission left = halves(new FingerTendon("f0"), new FingerTendon("f1"));
        Transmission right = halves(new FingerTendon("f2"), new FingerTendon("f3"));
        TendonDrive drive = drive(List.of(1, 1, 1, 1), halves(left, right), 40, 0, Map.of(), open);
        drive.reset(open);
        drive.wind(0, 1);
        evaluate(drive, new double[] {1.5, 0.7, 1, 1.2}, open);
        for (int f = 0; f < 4; f++) {
            agrees("two-level pulley tree, tendon " + (f + 1), 10, drive.jointTension(f, 0));
        }
    }

    /** A common spool gives equal travel: a finger that is ahead goes slack and the other carries all. */
    @Test
    void referenceSpoolGivesEqualTravel() {
        double[] open = {1, 1};
        TendonDrive drive = drive(
                List.of(1, 1),
                new Spool(List.of(new Branch(1, new FingerTendon("f0")), new Branch(1, new FingerTendon("f1")))),
                40,
                0,
                Map.of(),
                open);
        drive.reset(open);
        // arm 10 mm: travels 1 and 3 mm, drum at 2 mm
        drive.spool()[0] = 2e-3;
        drive.wind(0, 2e-3);
        evaluate(drive, new double[] {1.1, 1.3}, open);
        agrees("spool, tendon 1 mm behind the drum at 1e4 N/m", 10, drive.jointTension(0, 0));
        agrees("spool, tendon 1 mm ahead of the drum", 0, drive.jointTension(1, 0));
    }

    // ------------------------------------------------------------------

    private static List<Row> rows(String id) {
        List<Row> all = new ArrayList<>(Reference.rows("drive/capstan.csv"));
        all.addAll(Reference.rows("drive/drive_train.csv"));
        return all.stream().filter(r -> r.id().equals(id)).toList();
    }

    private static void agrees(String what, double expected, double found) {
        Truth.record(
                "drive",
                what,
                "Euler-Eytelwein, levers",
                expected,
                found,
                "1e-9, or the printed digits",
                "closed formula");
        // printed with ten digits
        assertThat(found).as(what).isCloseTo(expected, Offset.offset(CLOSE * Math.max(1, 10 * expected)));
    }

    private static void evaluate(TendonDrive drive, double[] q, double[] before) {
        int n = q.length + drive.spools();
        drive.accumulate(q, before, 0, new double[n], null, null, n);
    }

    private static Floating halves(Transmission a, Transmission b) {
        return new Floating(List.of(new Branch(0.5, a), new Branch(0.5, b)));
    }

    /** Fingers with so many joints each, arms 10 mm. */
    static TendonDrive drive(
            List<Integer> joints,
            Transmission pulls,
            double most,
            double friction,
            Map<String, Double> wrap,
            double[] open) {
        PadLayer pad = new PadLayer(0.01, 0.001, new Rubber("none", 1e6, "invented"));
        List<Finger> fingers = new ArrayList<>();
        List<int[]> coordinates = new ArrayList<>();
        int next = 0;
        for (int n : joints) {
            List<Phalanx> phalanges = new ArrayList<>();
            List<Joint> pins = new ArrayList<>();
            int[] mine = new int[n];
            for (int i = 0; i < n; i++) {
                phalanges.add(new Phalanx(0.03, 0.01, 0.002, pad, Phalanx.Tip.SQUARE));
                pins.add(new Joint(new PinJoint(0, OptionalDouble.empty()), 0, -9, 9, 0.01));
                mine[i] = next++;
            }
            coordinates.add(mine);
            fingers.add(new Finger("f" + fingers.size(), Vec3.ZERO, 0, phalanges, pins));
        }
        Motor motor = new Motor("m", pulls, most, 1e4, friction, wrap, Motor.WhenOff.POWERED);
        return new TendonDrive(
                fingers,
                List.of(motor),
                coordinates,
                open,
                Set.copyOf(fingers.stream().map(Finger::name).toList()));
    }
}
