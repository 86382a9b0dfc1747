package gripwright.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.jspecify.annotations.Nullable;

/**
 * The forces on the taxels of one pad together: cross-talk is taken apart, or a plate's force shared out evenly; then their
 * total and its centre. Arrays over all taxels are shared with the decoder.
 */
final class PadForces {
    private static final double CENTRE_CLEAR = 5;

    private final Decoder.PadPlace place;
    private final int[] fitted;
    private final @Nullable RealMatrix inverse;
    private final double part;
    private final double[] force;
    private final double[] error;
    private final double[] noise;
    private final double[] band;
    private double total;
    private double totalError;
    private double centre = Double.NaN;
    private double centreError = Double.NaN;
    private double centreNoise = Double.NaN;
    private double centreBand = Double.NaN;

    /**
     * @param force out: of all taxels [N]
     * @param error standard deviations; changed with the forces
     * @param noise by noise alone
     * @param band half widths of the plays
     */
    PadForces(Decoding how, Decoder.PadPlace place, double[] force, double[] error, double[] noise, double[] band) {
        List<Integer> all = fitted(how, place);
        this.place = place;
        this.fitted = all.stream().mapToInt(i -> i).toArray();
        this.inverse = apart(how, all).orElse(null);
        this.part = how.plate() ? 1.0 / Math.max(1, fitted.length) : 1;
        this.force = force;
        this.error = error;
        this.noise = noise;
        this.band = band;
    }

    private static List<Integer> fitted(Decoding how, Decoder.PadPlace place) {
        List<Integer> fitted = new ArrayList<>();
        for (int i = place.first(); i < place.first() + place.along().length; i++) {
            if (how.taxels().get(i).model().isPresent()) {
                fitted.add(i);
            }
        }
        return fitted;
    }

    /** From readings in N to forces, for a pad of which every fitted taxel was pressed alone. */
    private static Optional<RealMatrix> apart(Decoding how, List<Integer> fitted) {
        int n = fitted.size();
        double[][] m = new double[n][n];
        for (int j = 0; j < n; j++) {
            List<Double> row = how.slopes().get(how.taxels().get(fitted.get(j)).column());
            for (int i = 0; i < n; i++) {
                double slope = row == null ? Double.NaN : row.get(fitted.get(i));
                m[i][j] = slope
                        / how.taxels().get(fitted.get(i)).model().orElseThrow().sensitivity();
                if (!Double.isFinite(slope)) {
                    return Optional.empty();
                }
            }
        }
        if (n == 0) {
            return Optional.empty();
        }
        LUDecomposition lu = new LUDecomposition(MatrixUtils.createRealMatrix(m));
        return lu.getSolver().isNonSingular() ? Optional.of(lu.getSolver().getInverse()) : Optional.empty();
    }

    boolean takesApart() {
        return inverse != null;
    }

    /** Taxels that have a model. */
    int[] fitted() {
        return fitted;
    }

    double along(int taxel) {
        return place.along()[taxel - place.first()];
    }

    private static double square(double v) {
        return v * v;
    }

    /**
     * Turns the forces that taxels show by themselves into their own.
     *
     * @param linear of all taxels [N]
     */
    void share(double[] linear) {
        int n = fitted.length;
        if (inverse == null) {
            for (int i : fitted) {
                force[i] = part * linear[i];
                error[i] *= part;
                noise[i] *= part;
                band[i] *= part;
            }
            return;
        }
        double[] spread = new double[n];
        double[] chance = new double[n];
        double[] plays = new double[n];
        for (int a = 0; a < n; a++) {
            double f = 0;
            double v = 0;
            double w = 0;
            double u = 0;
            for (int b = 0; b < n; b++) {
                double g = inverse.getEntry(a, b);
                f += g * linear[fitted[b]];
                v += square(g * error[fitted[b]]);
                w += square(g * noise[fitted[b]]);
                u += square(g * band[fitted[b]]);
            }
            force[fitted[a]] = f;
            spread[a] = Math.sqrt(v);
            chance[a] = Math.sqrt(w);
            plays[a] = Math.sqrt(u);
        }
        for (int a = 0; a < n; a++) {
            error[fitted[a]] = spread[a];
            noise[fitted[a]] = chance[a];
            band[fitted[a]] = plays[a];
        }
    }

    /** Sums the forces up to their total and centre. */
    void sum() {
        double sum = 0;
        double moment = 0;
        double variance = 0;
        for (int i : fitted) {
            if (!Double.isNaN(force[i])) {
                sum += force[i];
                moment += force[i] * place.along()[i - place.first()];
                variance += square(error[i]);
            }
        }
        total = sum;
        totalError = Math.sqrt(variance);
        boolean clear = sum > CENTRE_CLEAR * totalError && sum > 0;
        centre = clear ? moment / sum : Double.NaN;
        double spread = 0;
        double chance = 0;
        double plays = 0;
        for (int i : fitted) {
            if (clear && !Double.isNaN(force[i])) {
                double arm = (place.along()[i - place.first()] - centre) / sum;
                spread += square(arm * error[i]);
                chance += square(arm * noise[i]);
                plays += square(arm * band[i]);
            }
        }
        centreError = clear ? Math.sqrt(spread) : Double.NaN;
        centreNoise = clear ? Math.sqrt(chance) : Double.NaN;
        centreBand = clear ? Math.sqrt(plays) : Double.NaN;
    }

    double total() {
        return total;
    }

    double totalError() {
        return totalError;
    }

    /** Centre of force [m]; NaN if the force is not clear of the noise. */
    double centre() {
        return centre;
    }

    double centreError() {
        return centreError;
    }

    /** Its standard deviation by noise alone [m]. */
    double centreNoise() {
        return centreNoise;
    }

    /** How far the play of all taxels, each by half its width, moves it [m]. */
    double centreBand() {
        return centreBand;
    }
}
