package gripwright.study;

import gripwright.closing.Conditions;
import gripwright.model.Placement;
import gripwright.model.Scatter;
import gripwright.stats.LogisticSurface;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * The chance that one object is held with one grip, over place, height and a factor on the friction of all pads; fitted
 * to closings, with mass, table friction, pads and springs varying as in trials.
 */
public final class HeldSurface {
    /** One closing of the design. */
    record Sample(Conditions conditions, double friction, boolean held) {}

    /** A change of the friction factor that counts like one standard deviation of the place. */
    static final double FRICTION_STEP = 0.3;

    private static final int FOLDS = 5;

    private final double[] perUnit;
    private final LogisticSurface surface;
    private final Quality quality;

    /**
     * How good a surface is on closings it was not fitted to (five parts, each left out once).
     *
     * @param object and
     * @param grip it is of
     * @param closings decided ones it was fitted to
     * @param undecided closings left out
     * @param held share of the closings [-]
     * @param bias mean chance minus share held [-]
     * @param biasError standard error of the bias [-]
     * @param sharpness mean square of chance minus answer (Brier score): 0 = all foretold, held (1 - held) = knows nothing
     */
    public record Quality(
            String object,
            String grip,
            int closings,
            int undecided,
            double held,
            double bias,
            double biasError,
            double sharpness) {}

    HeldSurface(String object, String grip, List<Sample> samples, int undecided, Placement placement) {
        perUnit = new double[] {
            perUnit(placement.x()), perUnit(placement.y()), perUnit(placement.turn()), perUnit(placement.height())
        };
        double[][] inputs = samples.stream()
                .map(s -> {
                    double[] u = place(s.conditions.x(), s.conditions.y(), s.conditions.turn(), s.conditions.height());
                    u[4] = friction(s.friction);
                    return u;
                })
                .toArray(double[][]::new);
        boolean[] held = new boolean[samples.size()];
        for (int i = 0; i < held.length; i++) {
            held[i] = samples.get(i).held;
        }
        surface = LogisticSurface.fit(inputs, held);
        quality = quality(object, grip, inputs, held, undecided);
    }

    private static double perUnit(Scatter scatter) {
        double deviation = scatter.law() == Scatter.Law.UNIFORM ? scatter.size() / Math.sqrt(3) : scatter.size();
        return deviation > 0 ? 1 / deviation : 0;
    }

    Quality quality() {
        return quality;
    }

    /** A place in the surface's own units, shape 5; the last, friction, is left open. */
    double[] place(double x, double y, double turn, double height) {
        return new double[] {x * perUnit[0], y * perUnit[1], turn * perUnit[2], height * perUnit[3], 0};
    }

    private static double friction(double factor) {
        return (factor - 1) / FRICTION_STEP;
    }

    /**
     * Chances at places by friction factors, for the most probable surface and others that the closings leave possible.
     *
     * @return by surface, then friction factor, averaged over the places [-]
     */
    double[][] chances(List<double[]> places, double[] factors, int others, IntToDoubleFunction scores) {
        double[] last = new double[factors.length];
        for (int i = 0; i < last.length; i++) {
            last[i] = friction(factors[i]);
        }
        double[][][] all = surface.chances(places, last, others, scores);
        double[][] mean = new double[all.length][factors.length];
        for (int m = 0; m < all.length; m++) {
            for (double[] one : all[m]) {
                for (int f = 0; f < factors.length; f++) {
                    mean[m][f] += one[f] / places.size();
                }
            }
        }
        return mean;
    }

    private Quality quality(String object, String grip, double[][] inputs, boolean[] held, int undecided) {
        int n = held.length;
        double share = 0;
        double bias = 0;
        double square = 0;
        for (int fold = 0; fold < FOLDS; fold++) {
            List<double[]> in = new ArrayList<>();
            List<Boolean> answers = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                if (i % FOLDS != fold) {
                    in.add(inputs[i]);
                    answers.add(held[i]);
                }
            }
            boolean[] yes = new boolean[answers.size()];
            for (int i = 0; i < yes.length; i++) {
                yes[i] = answers.get(i);
            }
            LogisticSurface part = surface.refit(in.toArray(new double[0][]), yes);
            for (int i = fold; i < n; i += FOLDS) {
                double off = part.chance(inputs[i]) - (held[i] ? 1 : 0);
                bias += off / n;
                square += off * off / n;
                share += (held[i] ? 1.0 : 0.0) / n;
            }
        }
        return new Quality(
                object, grip, n, undecided, share, bias, Math.sqrt(Math.max(0, square - bias * bias) / n), square);
    }
}
