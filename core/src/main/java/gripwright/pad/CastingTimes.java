package gripwright.pad;

import java.util.ArrayList;
import java.util.List;

/** How long pouring takes, step by step, against the resin's pot life. */
public record CastingTimes(List<Step> steps, double potLife) {
    /** Bubble that is worth waiting for [m, at atmosphere]. */
    public static final double BUBBLE = 0.1e-3;

    /** Bubble left in a port, and how slowly air goes through silicone [m^2/s]; both from memory. */
    private static final double LEFT_BUBBLE = 0.2e-3;

    private static final double DIFFUSION = 1e-10;
    private static final double MINUTE = 60;

    public CastingTimes {
        steps = List.copyOf(steps);
    }

    /**
     * One step.
     *
     * @param time [s]
     * @param why where the time comes from
     */
    public record Step(String name, double time, String why) {}

    /** @param depth of rubber over the board [m] */
    public static CastingTimes of(PadSetup.Casting c, double depth) {
        List<Step> steps = new ArrayList<>();
        steps.add(
                new Step("weigh and stir", 3 * MINUTE, "common practice, no source; the resin maker's sheet decides"));
        steps.add(new Step(
                "first pull: foam crests and falls, then 5 min", 8 * MINUTE, "suppliers' guides say 3 to 5 min after"));
        steps.add(new Step("pour over the board", 2 * MINUTE, "common practice, no source"));
        double rise = Cavity.rise(BUBBLE, c.vacuum(), c.viscosity(), Cavity.DENSITY, depth);
        steps.add(new Step(
                "second pull, until a bubble of 0.1 mm has risen",
                Math.max(rise, 2 * MINUTE),
                rise > 2 * MINUTE ? "Stokes" : "Stokes gives less; 2 min to pump down"));
        steps.add(new Step("let air in", MINUTE, "common practice, no source"));
        steps.add(new Step(
                "leave it at atmosphere while air left in the ports dissolves",
                LEFT_BUBBLE * LEFT_BUBBLE / DIFFUSION,
                "radius 0.2 mm squared over 1e-10 m2/s, from memory"));
        return new CastingTimes(steps, c.potLife());
    }

    public double total() {
        return steps.stream().mapToDouble(Step::time).sum();
    }

    /** Whether all of it fits into the pot life. */
    public boolean fits() {
        return total() <= potLife;
    }
}
