package gripwright.report;

import gripwright.model.GraspObject;
import gripwright.model.Hand;
import gripwright.model.Project;
import gripwright.model.Spread;
import gripwright.study.BenchFormulas;
import gripwright.study.BenchFormulas.Found;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;

/** Tilt test: the friction of rubber on the surfaces of a need. */
final class TiltSheet {
    private static final double ANGLE_ERROR = Math.toRadians(1);
    private static final double SAMPLE_AREA = 20e-3 * 20e-3;
    private static final double SAMPLE_MASS = 0.2;
    private static final int REPEATS = 5;

    private TiltSheet() {}

    static BenchSheet of(Project project) {
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
        return new BenchSheet(
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
                List.of("u(\u03bc) = (1 + \u03bc\u00b2) u(slope), slope in radians: 1 deg at \u03bc = "
                        + Num.text(at.value(), 2) + " makes " + Num.digits(at.uncertainty(), 2)
                        + ". Add the standard deviation between spots: the root of the sum of squares."),
                List.of(
                        "In hand.yaml, under friction and the name of the rubber, mean +- one standard deviation: glass: 0.74 +- 0.06.",
                        "The table in need.yaml: surface: {friction: 0.31 +- 0.03}.",
                        BenchSheet.RERUN),
                List.of(
                        "Rubber that only creeps has no sharp slope: note the one at which it moves 1 mm a second.",
                        "Above 45 deg the tray may tip instead of slide: lower it, or pull it level with a balance"
                                + " (\u03bc = pull / weight)."),
                columns(),
                rows);
    }

    private static List<String> tiltRow(String pair, Spread mu) {
        List<String> row = new ArrayList<>(List.of(
                pair,
                Num.text(mu.mean(), 2) + (mu.deviation() > 0 ? " \u00b1 " + Num.text(mu.deviation(), 2) : ""),
                Num.text(Math.toDegrees(Math.atan(mu.mean())), 1) + " deg"));
        row.addAll(Collections.nCopies(REPEATS, ""));
        return row;
    }

    private static List<String> columns() {
        List<String> columns = new ArrayList<>(List.of("pair", "assumed", "slope then"));
        for (int i = 1; i <= REPEATS; i++) {
            columns.add("" + i);
        }
        columns.add("mean");
        return columns;
    }
}
