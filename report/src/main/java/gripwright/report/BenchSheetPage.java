package gripwright.report;

import gripwright.model.Finger;
import gripwright.model.GraspObject;
import gripwright.model.Hand;
import gripwright.model.Joint;
import gripwright.model.Motor;
import gripwright.model.PadLayer;
import gripwright.model.Phalanx;
import gripwright.model.Project;
import gripwright.model.Spread;
import gripwright.study.BenchFormulas;
import gripwright.study.BenchFormulas.Found;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Bench measurements that replace assumptions of a project, each a sheet to print: how, what to write down, formula. */
public final class BenchSheetPage {
    private static final double LEVER = 0.05;
    private static final double TURN = Math.toRadians(20);
    private static final double ANGLE_ERROR = Math.toRadians(1);
    private static final double SAMPLE_AREA = 20e-3 * 20e-3;
    private static final double SAMPLE_MASS = 0.2;
    private static final double SHEAR_FORCE = 5;
    private static final double PULL = 20;
    private static final double BALANCE_ERROR = 0.01;
    private static final int REPEATS = 5;
    private static final int MOST_ROWS = 24;

    private static final String STYLE = """
            h2.plain{display:block}
            table.fill td,table.fill th{height:32px;vertical-align:middle;padding-top:4px;padding-bottom:4px}
            table.fill td.w{border-left:1px solid var(--rule);min-width:64px}
            .formula{font:600 18px/1.5 var(--serif);margin:4px 0 10px}
            @media print{thead{display:table-header-group}table.fill{font-size:14px}table.fill td,table.fill th{height:38px}}
            """;

    private final Project project;
    private final PageFrame frame;

    private BenchSheetPage(Project project) {
        this.project = project;
        this.frame = new PageFrame("Bench measurements: " + project.hand().name(), STYLE);
    }

    /** The whole HTML file. */
    public static String write(Project project) {
        BenchSheetPage page = new BenchSheetPage(project);
        page.tilt();
        page.springs();
        page.shear();
        page.tendons();
        return page.frame.done();
    }

    /** What one sheet says. */
    private record Sheet(
            String title,
            String replaces,
            List<String> need,
            List<String> steps,
            String formula,
            List<String> error,
            List<String> mind) {}

    private void sheet(Sheet s, List<String> columns, List<List<String>> rows) {
        Html page = frame.section(s.title);
        page.say(Num.sentence(s.replaces));
        list(page, "You need", "ul", s.need);
        list(page, "How", "ol", s.steps);
        page.heading("Formula").raw("<p class=\"formula\">").text(s.formula).raw("</p>");
        list(page, "How well it is known then", "ul", s.error);
        list(page, "Mind", "ul", s.mind);
        page.heading("Write down");
        page.raw("<div class=\"scroll\"><table class=\"fill\"><thead><tr>");
        columns.forEach(c -> page.element("th", "", c));
        page.raw("</tr></thead><tbody>");
        for (List<String> row : rows.stream().limit(MOST_ROWS).toList()) {
            page.raw("<tr>");
            for (int i = 0; i < columns.size(); i++) {
                String cell = i < row.size() ? row.get(i) : "";
                page.element("td", cell.isEmpty() ? "w" : "", Num.sentence(cell));
            }
            page.raw("</tr>");
        }
        page.raw("</tbody></table></div>");
        if (rows.size() > MOST_ROWS) {
            page.small((rows.size() - MOST_ROWS) + " more; copy this sheet for them.");
        }
        frame.end();
    }

    private static void list(Html page, String title, String tag, List<String> items) {
        page.heading(title).raw("<" + tag + " class=\"cautions\">");
        items.forEach(i -> page.element("li", "", Num.sentence(i)));
        page.raw("</" + tag + ">");
    }

    private static List<String> repeats() {
        return Collections.nCopies(REPEATS, "");
    }

    // ---------------------------------------------------------------- friction

    private void tilt() {
        Hand hand = project.hand();
        Set<String> surfaces = new LinkedHashSet<>();
        project.need().objects().stream().map(GraspObject::surface).forEach(surfaces::add);
        List<List<String>> rows = new ArrayList<>();
        new TreeMap<>(hand.friction().byRubber())
                .forEach((rubber, table) -> surfaces.forEach(surface -> {
                    Spread mu = table.get(surface);
                    if (mu != null) {
                        rows.add(tiltRow(rubber + " on " + surface, mu));
                    }
                }));
        rows.add(tiltRow("table under an object", project.need().tableFriction()));
        double pressure = SAMPLE_MASS * BenchFormulas.GRAVITY / SAMPLE_AREA;
        Found at = BenchFormulas.friction(Math.toRadians(38), ANGLE_ERROR);
        sheet(
                new Sheet(
                        "Tilt test: friction of rubber on a surface",
                        "Replaces the guesses under friction in hand.yaml, and of the surface in need.yaml.",
                        List.of(
                                "a flat piece of the surface, or the object itself, on a board with a hinge; an angle"
                                        + " gauge or a ruler for rise over run",
                                "a pad sample cast like the pads, about 20 mm square, on a small tray with "
                                        + Num.grams(SAMPLE_MASS) + ": " + Num.text(pressure / 1e3, 1)
                                        + " kPa; three feet of the same rubber do not tip over"),
                        List.of(
                                "Clean or soil pad and surface as they are in use, and say which.",
                                "Set the tray down, wait 10 s, tilt slowly (about 1 deg a second) until it creeps steadily.",
                                "Write the slope. Turn the tray, take another spot, " + REPEATS + " times.",
                                "Repeat with twice the weight: rubber grips less, for its load, the harder it is pressed.",
                                "Take the mean of the slopes; the spread between spots belongs to the result."),
                        "\u03bc = tan(slope) = rise / run",
                        List.of(
                                "u(\u03bc) = (1 + \u03bc\u00b2) u(slope), slope in radians: 1 deg at \u03bc = "
                                        + Num.text(at.value(), 2) + " makes " + Num.digits(at.uncertainty(), 2)
                                        + ". Add the standard deviation between spots: the root of the sum of squares.",
                                "Into the file as mean +- one standard deviation, such as 0.74 +- 0.06."),
                        List.of(
                                "Rubber that only creeps has no sharp slope: note the one at which it moves 1 mm a second.",
                                "Above 45 deg the tray may tip instead of slide: lower it, or pull it level with a balance"
                                        + " (\u03bc = pull / weight).")),
                columns("pair", "assumed", "slope then"),
                rows);
    }

    private static List<String> tiltRow(String pair, Spread mu) {
        List<String> row = new ArrayList<>(List.of(
                pair,
                Num.text(mu.mean(), 2) + (mu.deviation() > 0 ? " \u00b1 " + Num.text(mu.deviation(), 2) : ""),
                Num.text(Math.toDegrees(Math.atan(mu.mean())), 1) + " deg"));
        row.addAll(repeats());
        return row;
    }

    private static List<String> columns(String... first) {
        List<String> columns = new ArrayList<>(List.of(first));
        for (int i = 1; i <= REPEATS; i++) {
            columns.add("" + i);
        }
        columns.add("mean");
        return columns;
    }

    // ----------------------------------------------------------------- springs

    private void springs() {
        List<List<String>> rows = new ArrayList<>();
        for (Finger finger : project.hand().fingers()) {
            for (int i = 0; i < finger.joints().size(); i++) {
                Joint joint = finger.joints().get(i);
                double k = joint.kind().bendingRate();
                if (k > 0) {
                    rows.add(List.of(
                            finger.name() + " " + (i + 1),
                            Num.digits(k, 3) + " N\u00b7m/rad",
                            Num.grams(roundMass(BenchFormulas.massFor(k, LEVER, TURN)))));
                }
            }
        }
        Found at = BenchFormulas.springRate(0.1, 0.0002, LEVER, 0.0005, TURN, Math.toRadians(0.7));
        sheet(
                new Sheet(
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
                        List.of(
                                "u(k)/k is the root of the sum of (u(m)/m)\u00b2, (u(r)/r)\u00b2 and (u(turn)/turn)\u00b2: 0.5"
                                        + " mm in " + Num.mm(LEVER) + " and 0.7 deg in "
                                        + Num.text(Math.toDegrees(TURN), 0) + " deg make "
                                        + Num.text(100 * at.uncertainty() / at.value(), 1) + " %."),
                        List.of(
                                "Loaded springs fly: eyes protected, the weight no higher than 5 cm above a soft pad.",
                                "Cut the motor's supply before reaching between the fingers; a winch that starts by itself"
                                        + " closes on yours.")),
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

    // ------------------------------------------------------------------- shear

    private void shear() {
        Map<List<Object>, String> pads = new LinkedHashMap<>();
        pads.put(key(project.hand().palm().pad()), "palm");
        for (Finger finger : project.hand().fingers()) {
            for (Phalanx phalanx : finger.phalanges()) {
                pads.merge(key(phalanx.pad()), finger.name(), (a, b) -> a.contains(b) ? a : a + ", " + b);
            }
        }
        List<List<String>> rows = new ArrayList<>();
        pads.forEach((key, where) -> {
            PadLayer pad = (PadLayer) key.get(2);
            double g = pad.rubber().shearModulus();
            rows.add(List.of(
                    pad.rubber().name() + ", " + Num.mm(pad.thickness()) + " (" + where + ")",
                    Num.digits(pad.rubber().modulus() / 1e6, 3) + " MPa",
                    Num.digits(1e3 * SHEAR_FORCE * pad.thickness() / (g * SAMPLE_AREA), 2) + " mm"));
        });
        Found at = BenchFormulas.shearModulus(5, 0.05, 4e-3, 0.05e-3, SAMPLE_AREA, 0.05 * SAMPLE_AREA, 0.2e-3, 0.02e-3);
        sheet(
                new Sheet(
                        "Shear of a pad",
                        "Replaces the modulus that hand.yaml estimates from the hardness of a rubber: for rubber E = 3 G.",
                        List.of(
                                "a pad sample bonded between two plates, 20 mm \u00d7 20 mm, of the thickness of the pad; two"
                                        + " samples face to face on a middle plate pull straighter (then twice the area)",
                                "weights on a thread over the edge of the table, a dial gauge (0.01 mm) or a microscope"),
                        List.of(
                                "Fix the lower plate; pull the upper one level with the thread.",
                                "Load and unload twice to settle the rubber, then write force and shift for three loads"
                                        + " up and down; wait 30 s each.",
                                "Stay below a shift of a fifth of the thickness."),
                        "G = F t / (A d),  E = 3 G",
                        List.of(
                                "u(G)/G is the root of the sum of the squares of u/value of F, t, A and d: with 5 % of the"
                                        + " area, 0.05 mm of 4 mm and 0.02 mm of a shift of 0.2 mm, "
                                        + Num.text(100 * at.uncertainty() / at.value(), 0) + " %: the shift decides.",
                                "Up and down differ by the rubber's hysteresis: take the mean, note the difference."),
                        List.of("Solvent and primer of the bond: gloves, open window.")),
                List.of("rubber, thickness", "E assumed", "shift at 5 N then", "A", "F", "d up", "d down", "G", "E"),
                rows);
    }

    private static List<Object> key(PadLayer pad) {
        return List.of(pad.rubber(), pad.thickness(), pad);
    }

    // ----------------------------------------------------------------- tendons

    private void tendons() {
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
        sheet(
                new Sheet(
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
                                "A stretched tendon that breaks whips: eyes protected, nobody in its line.",
                                "Motor unplugged, not only switched off: fingers out of winch, gear and hand.")),
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
