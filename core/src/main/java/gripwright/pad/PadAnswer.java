package gripwright.pad;

import java.util.ArrayList;
import java.util.List;

/**
 * What one pad feels and does not feel; made by {@link #of}.
 *
 * @param limitBest smallest force felt straight over a chip [N]
 * @param limitWorst the same between two chips [N]
 * @param saturation force of a point load over a chip at which it clips [N]
 * @param bluntSaturation the same under a sphere of radius 10 mm; NaN beyond linear theory [N]
 * @param thinnest rubber over the chip that bears the wanted force without clipping [m]
 * @param bounds worst over the middle pitch, with the model's error
 * @param boundsWithoutError the same from noise alone
 * @param frictionShift how far a tangential load of 0.3 of the normal one shifts the pattern [m]
 * @param unfilled reading per newton over the chip with port and cavity full of air [Pa/N]
 * @param bubble that costs a tenth of the sensitivity [m^3]
 * @param left share of the sensitivity after one pull to the given vacuum, the pessimistic bound [-]
 * @param drift over one closing
 * @param averaging what more readings buy over a chip
 * @param best number of readings against noise and the greatest drift
 * @param area bounds of place along, across and force with the model's error; endless for a single row
 * @param casting how long pouring takes
 * @param perKelvin reading per kelvin of the filled, bonded cavity [Pa/K]
 * @param probes sphere of radius 10 mm pressed in, up to where linear theory ends
 * @param thicknesses peak and widths over rubber thickness
 * @param hardnesses peak over modulus
 */
public record PadAnswer(
        PadDesign design,
        PadResponse response,
        Strip strip,
        double limitBest,
        double limitWorst,
        double saturation,
        double bluntSaturation,
        double thinnest,
        Strip.Bounds bounds,
        Strip.Bounds boundsWithoutError,
        double frictionShift,
        double unfilled,
        double bubble,
        double left,
        Drift drift,
        List<Averaging> averaging,
        Averaging best,
        AreaBounds area,
        CastingTimes casting,
        double perKelvin,
        List<LayerContact.Pressed> probes,
        List<Thickness> thicknesses,
        List<Hardness> hardnesses,
        List<String> warnings) {
    /** Linear theory ends where a probe sinks in deeper than this share of the rubber. */
    static final double DEEPEST = 0.15;

    /** Of the round probe for stiffness and blunt loads [m]. */
    static final double PROBE = 10e-3;

    private static final double FRICTION = 0.3;
    private static final double[] SINKS = {0.01, 0.02, 0.04, 0.07, 0.1, 0.15};
    private static final double[] THICKNESSES = {0.5, 0.7, 1, 1.4, 2, 2.8};
    private static final double[] MODULI = {0.2e6, 0.4e6, 0.8e6, 1.6e6, 3.2e6};

    public PadAnswer {
        averaging = List.copyOf(averaging);
        probes = List.copyOf(probes);
        thicknesses = List.copyOf(thicknesses);
        hardnesses = List.copyOf(hardnesses);
        warnings = List.copyOf(warnings);
    }

    /** One point of the curve over thickness: over the chip [m], peak [Pa/N], recommended and widest pitch [m]. */
    public record Thickness(double overChip, double peak, double recommendedPitch, double widestPitch) {}

    /** One point of the curve over hardness: modulus [Pa], peak [Pa/N]. */
    public record Hardness(double modulus, double peak) {}

    public static PadAnswer of(PadDesign pad, PadSetup setup) {
        PadSetup.Judging judging = setup.judging();
        PadSetup.Casting casting = setup.casting();
        Chip chip = pad.chip();
        PadGeometry geometry = PadGeometry.of(chip, pad.overBoard());
        PadResponse response = PadModel.filled(geometry, pad.modulus(), pad.bulk());
        Strip strip = new Strip(pad, response);
        Drift drift = Drift.over(setup.touch().closing(), setup.touch().warming(), response, chip);
        Cavity cavity = new Cavity(chip, pad.modulus(), pad.bulk());
        double headroom = chip.greatest() - Cavity.AMBIENT;
        List<LayerContact.Pressed> probes = new ArrayList<>();
        for (double sink : SINKS) {
            probes.add(probe(pad, sink));
        }
        return new PadAnswer(
                pad,
                response,
                strip,
                limit(chip, response.peak(), judging),
                limit(chip, strip.worst(), judging),
                headroom / response.peak(),
                bluntSaturation(probes, headroom),
                Math.sqrt(BondedLayer.point(0, 1) * judging.force() / headroom),
                strip.worstBounds(judging.force(), chip.noise(), judging.modelError()),
                strip.worstBounds(judging.force(), chip.noise(), 0),
                Math.abs(response.frictionShift(FRICTION)),
                PadModel.unfilled(geometry, pad.modulus(), pad.bulk()).at(0, chip.volume(), Cavity.AMBIENT),
                cavity.bubbleFor(0.1),
                cavity.withBubble(cavity.leftAfter(casting.vacuum(), pad.overBoard())),
                drift,
                Averaging.table(pad, response.peak(), drift, judging),
                Averaging.best(pad, response.peak(), drift, judging),
                AreaBounds.worst(pad, response, judging.force(), chip.noise(), judging.modelError()),
                CastingTimes.of(casting, pad.overBoard()),
                Double.isNaN(chip.heat()) ? response.perKelvin(Cavity.EXPANSION) : chip.heat(),
                probes,
                thicknesses(pad),
                hardnesses(pad),
                warnings(pad, probes, judging.force()));
    }

    private static double limit(Chip chip, double sensitivity, PadSetup.Judging j) {
        return Detection.limit(chip.noise(), sensitivity, j.falseAlarm(), j.miss(), j.zeros());
    }

    /** Force at which the pressure straight under the sphere reaches the chip's end; NaN beyond the table. */
    private static double bluntSaturation(List<LayerContact.Pressed> probes, double headroom) {
        LayerContact.Pressed before = probes.get(0);
        if (before.boardPressure() > headroom) {
            return headroom / before.boardPressure() * before.force();
        }
        for (LayerContact.Pressed next : probes) {
            if (next.boardPressure() > headroom) {
                double share = (headroom - before.boardPressure()) / (next.boardPressure() - before.boardPressure());
                return before.force() + share * (next.force() - before.force());
            }
            before = next;
        }
        return Double.NaN;
    }

    private static List<Thickness> thicknesses(PadDesign pad) {
        List<Thickness> out = new ArrayList<>();
        for (double share : THICKNESSES) {
            out.add(thickness(pad, pad.overChip() * share));
        }
        return out;
    }

    /** The pad with another thickness over its chips. */
    public static Thickness thickness(PadDesign pad, double overChip) {
        PadGeometry geometry = PadGeometry.of(pad.chip(), pad.chip().height() + overChip);
        PadResponse r = PadModel.filled(geometry, pad.modulus(), pad.bulk());
        return new Thickness(overChip, r.peak(), 2 * r.radius(Strip.GOOD), 2 * r.radius(Strip.BLIND));
    }

    private static List<Hardness> hardnesses(PadDesign pad) {
        List<Hardness> out = new ArrayList<>();
        for (double modulus : MODULI) {
            PadGeometry geometry = PadGeometry.of(pad.chip(), pad.overBoard());
            out.add(new Hardness(
                    modulus, PadModel.filled(geometry, modulus, pad.bulk()).peak()));
        }
        return out;
    }

    private static List<String> warnings(PadDesign pad, List<LayerContact.Pressed> probes, double force) {
        List<String> out = new ArrayList<>();
        LayerContact.Pressed last = probes.get(probes.size() - 1);
        if (force > last.force()) {
            out.add("Linear theory ends before the wanted force: a round probe of radius 10 mm sinks in more than "
                    + Math.round(100 * DEEPEST) + " % of the rubber over the chip.");
        }
        probes.stream()
                .filter(p -> p.radius() > pad.overChip() && p.force() <= force)
                .findFirst()
                .ifPresent(
                        p -> out.add("The contact of a round probe of radius 10 mm grows wider than the rubber is thick"
                                + " before the wanted force: the reading then no longer says what force it is."));
        if (pad.width() < 2 * pad.overBoard()) {
            out.add(
                    "The strip is narrower than twice the rubber's height; the model, which takes a wide pad, reads about"
                            + " 4 % low there, and less surely the narrower it is.");
        }
        if (pad.overChip() < 0.35 * pad.chip().equalAreaRadius()) {
            out.add(
                    "The rubber over the chip is thin against the chip itself; its rectangular outline then matters and the"
                            + " round model is less sure.");
        }
        return out;
    }

    /** Stiffness of the pad under a light touch of the round probe [N/m]. */
    public double padStiffness() {
        return stiffness(probes.get(0), probes.get(1));
    }

    /** The same for a pad of which nothing else is wanted [N/m]. */
    static double stiffness(PadDesign pad) {
        return stiffness(probe(pad, SINKS[0]), probe(pad, SINKS[1]));
    }

    private static double stiffness(LayerContact.Pressed a, LayerContact.Pressed b) {
        return (b.force() - a.force()) / (b.indentation() - a.indentation());
    }

    private static LayerContact.Pressed probe(PadDesign pad, double sink) {
        return LayerContact.sphere(PROBE, sink * pad.overChip(), pad.modulus(), pad.overChip());
    }

    /** The same answer for a pad that differs only in its name. */
    public PadAnswer named(String name) {
        return new PadAnswer(
                design.named(name),
                response,
                strip,
                limitBest,
                limitWorst,
                saturation,
                bluntSaturation,
                thinnest,
                bounds,
                boundsWithoutError,
                frictionShift,
                unfilled,
                bubble,
                left,
                drift,
                averaging,
                best,
                area,
                casting,
                perKelvin,
                probes,
                thicknesses,
                hardnesses,
                warnings);
    }

    public boolean blind() {
        return !strip.gaps().isEmpty();
    }

    /** Saturation over the detection limit [dB]. */
    public double dynamicRange() {
        return 20 * Math.log10(saturation / limitBest);
    }

    /** Warming during a closing that looks like the smallest force felt [K], if the cavity is filled and bonded. */
    public double warmingLikeLimit() {
        return limitBest * response.peak() / perKelvin;
    }

    /** Heat in force units [N/K]: it does not change with air left in the cavity, which relieves both alike. */
    public double heatForce() {
        return perKelvin / response.peak();
    }
}
