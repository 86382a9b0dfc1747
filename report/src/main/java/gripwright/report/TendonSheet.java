package gripwright.report;

import gripwright.model.Motor;
import gripwright.model.Project;
import gripwright.study.BenchFormulas;
import gripwright.study.BenchFormulas.Found;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/** Loss of tendons in their sheaths, by two balances. */
final class TendonSheet {
    private static final double PULL = 20;
    private static final double BALANCE_ERROR = 0.01;

    private TendonSheet() {}

    static BenchSheet of(Project project) {
        List<List<String>> rows = new ArrayList<>();
        for (Motor motor : project.hand().motors()) {
            new TreeMap<>(motor.wrap()).forEach((finger, wrap) -> {
                if (wrap > 0) {
                    rows.add(List.of(
                            motor.name() + " to " + finger,
                            Num.text(motor.sheathFriction(), 2),
                            Num.text(Math.toDegrees(wrap), 0) + " deg",
                            Num.text(PULL * StrictMath.exp(-motor.sheathFriction() * wrap), 1) + " N"));
                }
            });
        }
        Found at = BenchFormulas.sheathFriction(PULL, 17.1, Math.PI / 2, BALANCE_ERROR);
        return new BenchSheet(
                "Loss of a tendon, by two balances",
                "Replaces the sheath friction in hand.yaml.",
                List.of(
                        "two spring balances or luggage scales to 50 N, read to 1 %; compare them first by hooking one"
                                + " to the other",
                        "the tendon in its own sheath, bent as in the hand"),
                List.of(
                        "Take the tendon off winch and finger; hook a balance to each end.",
                        "Pull one end so that the tendon creeps steadily at "
                                + Num.text(PULL, 0)
                                + " N while the other balance is let after; write both. Standing still, friction"
                                + " can be anything: read only while it creeps.",
                        "Pull back the other way. Do it at 10 N and 40 N too: a loss that is not in proportion is"
                                + " a kink or a knot.",
                        "Change the balances over and repeat: their difference drops out of the mean."),
                "\u03bc = ln(T1 / T2) / bend,  bend in radians (90 deg = 1.571)",
                List.of("u(\u03bc) = \u221a2 u(T)/T / bend: balances of 1 % on 90 deg make "
                        + Num.digits(at.uncertainty(), 2) + "; more bend makes it sharper."),
                List.of(
                        "In hand.yaml, at the motor: sheath friction: 0.092, the mean over its tendons.",
                        "The bends measured on the way go under wrap, by finger.",
                        BenchSheet.RERUN),
                List.of(
                        "A stretched tendon that breaks whips: eyes protected, nobody in its line.",
                        "Motor unplugged, not only switched off: fingers out of winch, gear and hand."),
                List.of(
                        "tendon",
                        "\u03bc assumed",
                        "bend",
                        "T2 at 20 N then",
                        "T1",
                        "T2",
                        "back T1",
                        "back T2",
                        "\u03bc"),
                rows);
    }
}
