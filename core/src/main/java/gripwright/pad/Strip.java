package gripwright.pad;

import java.util.ArrayList;
import java.util.List;

/** A strip of cells along x [m], its middle at 0: who feels a point load where, and where nobody does. */
public final class Strip {
    /** A spot is blind where the best cell reads less than this share of the best place's; our own convention. */
    public static final double BLIND = 0.2;

    /** At the recommended pitch the worst spot between two chips still reads this share of the best. */
    public static final double GOOD = 0.37;

    /** Stands for no reading at all. */
    public static final double NOTHING = 1e-4;

    private static final int STEPS = 40;

    private final PadDesign design;
    private final PadResponse response;

    public Strip(PadDesign design, PadResponse response) {
        this.design = design;
        this.response = response;
    }

    /** A stretch of the strip [m]. */
    public record Gap(double from, double to) {
        public double length() {
            return to - from;
        }
    }

    /** Standard deviations that no unbiased estimate beats, of place [m] and force over force [-]. */
    public record Bounds(double place, double force) {}

    public double cell(int i) {
        return (i - (design.count() - 1) / 2.0) * design.pitch();
    }

    /** The best cell's reading per newton at x, on the middle line of a row [Pa/N]. */
    public double best(double x) {
        double best = 0;
        for (int i = 0; i < design.count(); i++) {
            best = Math.max(best, response.at(x - cell(i)));
        }
        return best;
    }

    /** Blind stretches between the first and the last chip. */
    public List<Gap> gaps() {
        List<Gap> gaps = new ArrayList<>();
        double r = response.radius(BLIND);
        for (int i = 0; i + 1 < design.count(); i++) {
            double from = cell(i) + r;
            double to = cell(i + 1) - r;
            if (to > from) {
                gaps.add(new Gap(from, to));
            }
        }
        return gaps;
    }

    /** Widest pitch without blind gaps [m]. */
    public double widestPitch() {
        return 2 * response.radius(BLIND);
    }

    public double recommendedPitch() {
        return 2 * response.radius(GOOD);
    }

    /** Share of a cell's reading that its neighbour shows when the load is straight over the cell [-]. */
    public double crossTalk() {
        return design.count() < 2 ? 0 : response.at(design.pitch()) / response.peak();
    }

    /**
     * Worst reading per newton between two chips [Pa/N]. Beyond about 1.7 times the rubber's thickness a cell reads
     * slightly less than nothing, which no threshold sees; there it is {@link #NOTHING} of the peak.
     */
    public double worst() {
        double worst = response.peak();
        for (int k = 0; design.count() > 1 && k <= STEPS; k++) {
            worst = Math.min(worst, best(cell(0) + design.pitch() / 2 * k / STEPS));
        }
        return Math.max(worst, NOTHING * response.peak());
    }

    /**
     * Cramer-Rao bounds for a point load on the middle line, force unknown too.
     *
     * @param noise [Pa]
     * @param modelError relative error of each cell's gain, which noise cannot show [-]
     */
    public Bounds bounds(double x, double force, double noise, double modelError) {
        double xx = 0;
        double xf = 0;
        double ff = 0;
        for (int i = 0; i < design.count(); i++) {
            double s = response.at(x - cell(i));
            double d = force * response.slope(x - cell(i));
            double error = modelError * force * s;
            double w = 1 / (noise * noise + error * error);
            xx += w * d * d;
            xf += w * d * s;
            ff += w * s * s;
        }
        double det = xx * ff - xf * xf;
        return det > 1e-12 * xx * ff
                ? new Bounds(Math.sqrt(ff / det), Math.sqrt(xx / det) / force)
                : new Bounds(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /** The worst bounds over the pitch nearest to the middle. */
    public Bounds worstBounds(double force, double noise, double modelError) {
        double place = 0;
        double share = 0;
        double start = cell((design.count() - 1) / 2);
        for (int k = 0; k <= STEPS; k++) {
            Bounds b = bounds(start + design.pitch() * k / STEPS, force, noise, modelError);
            place = Math.max(place, b.place());
            share = Math.max(share, b.force());
        }
        return new Bounds(place, share);
    }
}
