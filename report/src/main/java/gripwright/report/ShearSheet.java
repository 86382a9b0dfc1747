package gripwright.report;

import gripwright.model.Finger;
import gripwright.model.PadLayer;
import gripwright.model.Phalanx;
import gripwright.model.Project;
import gripwright.model.Rubber;
import gripwright.study.BenchFormulas;
import gripwright.study.BenchFormulas.Found;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Shear modulus of the rubber of pads, from a side force. */
final class ShearSheet {
    private static final double SAMPLE_AREA = 20e-3 * 20e-3;
    private static final double SHEAR_FORCE = 5;

    private ShearSheet() {}

    /** One kind of sample to cast. */
    private record Sample(Rubber rubber, double thickness) {}

    static BenchSheet of(Project project) {
        Map<Sample, String> pads = new LinkedHashMap<>();
        pads.put(key(project.hand().palm().pad()), "palm");
        for (Finger finger : project.hand().fingers()) {
            for (Phalanx phalanx : finger.phalanges()) {
                pads.merge(key(phalanx.pad()), finger.name(), (a, b) -> a.contains(b) ? a : a + ", " + b);
            }
        }
        List<List<String>> rows = new ArrayList<>();
        pads.forEach((key, where) -> {
            double g = key.rubber.shearModulus();
            rows.add(List.of(
                    key.rubber.name() + ", " + Num.mm(key.thickness) + " (" + where + ")",
                    Num.digits(key.rubber.modulus() / 1e6, 3) + " MPa",
                    Num.digits(1e3 * SHEAR_FORCE * key.thickness / (g * SAMPLE_AREA), 2) + " mm"));
        });
        Found at = BenchFormulas.shearModulus(5, 0.05, 4e-3, 0.05e-3, SAMPLE_AREA, 0.05 * SAMPLE_AREA, 0.2e-3, 0.02e-3);
        return new BenchSheet(
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
                List.of(
                        "In hand.yaml, under rubbers and the name of the rubber, E in place of the hardness: soft: {modulus: 0.71 MPa}.",
                        BenchSheet.RERUN),
                List.of("Solvent and primer of the bond: gloves, open window."),
                List.of("rubber, thickness", "E assumed", "shift at 5 N then", "A", "F", "d up", "d down", "G", "E"),
                rows);
    }

    private static Sample key(PadLayer pad) {
        return new Sample(pad.rubber(), pad.thickness());
    }
}
