package gripwright.report;

import gripwright.model.Finger;
import gripwright.model.Flexure;
import gripwright.model.Joint;
import gripwright.model.Project;
import gripwright.study.BenchFormulas;
import gripwright.study.BenchFormulas.Found;
import java.util.ArrayList;
import java.util.List;

/** Spring rates of the joints, by weights on a lever. */
final class SpringSheet {
    private static final double LEVER = 0.05;
    private static final double TURN = Math.toRadians(20);

    private SpringSheet() {}

    static BenchSheet of(Project project) {
        List<List<String>> rows = new ArrayList<>();
        for (Finger finger : project.hand().fingers()) {
            for (int i = 0; i < finger.joints().size(); i++) {
                Joint joint = finger.joints().get(i);
                double k = joint.kind().bendingRate();
                if (k > 0) {
                    rows.add(List.of(
                            finger.name() + " " + (i + 1) + (joint.kind() instanceof Flexure ? ", flexure" : ", pin"),
                            Num.digits(k, 3) + " N\u00b7m/rad",
                            Num.grams(roundMass(BenchFormulas.massFor(k, LEVER, TURN)))));
                }
            }
        }
        Found at = BenchFormulas.springRate(0.1, 0.0002, LEVER, 0.0005, TURN, Math.toRadians(0.7));
        return new BenchSheet(
                "Spring rate of a joint, by weights",
                "Replaces the spring rates of pins and flexures in hand.yaml; a short flexure is known to about"
                        + " 30 % only until it is measured.",
                List.of(
                        "weights or bags of sand, and a kitchen balance that reads 1 g or better",
                        "a thread, a ruler, an angle gauge or a photograph square to the joint"),
                List.of(
                        "Slacken the tendons. Clamp the phalanx before the joint so that the joint's axis is level.",
                        "Hang a weight m1 from the phalanx after it, " + Num.mm(LEVER)
                                + " from the axis; turn the clamp until the lever is level halfway between both"
                                + " weights.",
                        "Write the angle. Hang a heavier m2 so that it turns by about "
                                + Num.text(Math.toDegrees(TURN), 0) + " deg; write the angle after 30 s.",
                        "Take the weight off again and see that the first angle comes back; a difference is"
                                + " friction or creep: halve it into the error.",
                        "Three times; once more at the cold and the warm end of use, for rubber."),
                "k = g (m2 \u2212 m1) r cos(turn / 2) / turn,  turn in radians, g = 9.81 m/s\u00b2",
                List.of("u(k)/k is the root of the sum of (u(m)/m)\u00b2, (u(r)/r)\u00b2 and (u(turn)/turn)\u00b2: 0.5"
                        + " mm in " + Num.mm(LEVER) + " and 0.7 deg in "
                        + Num.text(Math.toDegrees(TURN), 0) + " deg make "
                        + Num.text(100 * at.uncertainty() / at.value(), 1) + " %."),
                List.of(
                        "A pin's k in hand.yaml, at its joint: pin: {spring: 0.137 N*m/rad}.",
                        "A flexure's by its modulus: the stated modulus times k measured over k assumed; the sizes stay as they are.",
                        BenchSheet.RERUN),
                List.of(
                        "Loaded springs fly: eyes protected, the weight no higher than 5 cm above a soft pad.",
                        "Cut the motor's supply before reaching between the fingers; a winch that starts by itself"
                                + " closes on yours."),
                List.of(
                        "joint",
                        "assumed",
                        "m2 - m1 for 20 deg",
                        "r",
                        "m1",
                        "angle 1",
                        "m2",
                        "angle 2",
                        "angle 1 again",
                        "k"),
                rows);
    }

    /** To two digits, as one can put together from weights. */
    private static double roundMass(double mass) {
        double step = Math.pow(10, Math.floor(Math.log10(mass)) - 1);
        return Math.rint(mass / step) * step;
    }
}
