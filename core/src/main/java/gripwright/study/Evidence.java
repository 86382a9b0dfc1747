package gripwright.study;

import gripwright.stats.Holm;
import gripwright.study.ExplainResult.Estimate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Log-likelihoods of trials over a grid of scatter factor by friction factor, one table per surface. */
final class Evidence {
    private final double[] factors;
    private final double[] scatters;
    private final Map<String, double[][]> bySurface = new LinkedHashMap<>();
    private final Map<String, Integer> trials = new LinkedHashMap<>();
    private int unplaced;

    Evidence(double[] factors, double[] scatters) {
        this.factors = factors;
        this.scatters = scatters;
    }

    /** Adds trials of the chance over friction factors at one scatter factor. */
    void add(String surface, int scatter, double[] chance, boolean held, int count) {
        double[][] table = bySurface.computeIfAbsent(surface, k -> new double[scatters.length][factors.length]);
        for (int f = 0; f < factors.length; f++) {
            table[scatter][f] += count * StrictMath.log(held ? chance[f] : 1 - chance[f]);
        }
    }

    void seen(String surface, int count, boolean withoutPlace) {
        trials.merge(surface, count, Integer::sum);
        unplaced += withoutPlace ? count : 0;
    }

    /** One estimate per surface, corrected together with the scatter. */
    List<Estimate> friction() {
        return corrected().subList(0, bySurface.size());
    }

    Optional<Estimate> scatter() {
        List<Estimate> all = corrected();
        return all.size() > bySurface.size() ? Optional.of(all.get(all.size() - 1)) : Optional.empty();
    }

    private List<Estimate> corrected() {
        List<Estimate> all = new ArrayList<>();
        for (String surface : bySurface.keySet()) {
            double[] profile = new double[factors.length];
            for (int f = 0; f < factors.length; f++) {
                double best = Double.NEGATIVE_INFINITY;
                for (int s = 0; s < scatters.length; s++) {
                    best = Math.max(best, table(surface)[s][f] + others(surface, s));
                }
                profile[f] = best;
            }
            all.add(Likelihood.estimate(surface, factors, profile, trials.getOrDefault(surface, 0)));
        }
        if (unplaced > 0) {
            double[] profile = new double[scatters.length];
            for (int s = 0; s < scatters.length; s++) {
                profile[s] = others("", s);
            }
            all.add(Likelihood.estimate("placement", scatters, profile, unplaced));
        }
        double[] corrected =
                Holm.corrected(all.stream().mapToDouble(Estimate::luck).toArray());
        for (int i = 0; i < corrected.length; i++) {
            all.set(i, all.get(i).corrected(corrected[i]));
        }
        return all;
    }

    /** All other surfaces at their best for a scatter. */
    private double others(String but, int scatter) {
        double sum = 0;
        for (String surface : bySurface.keySet()) {
            sum += surface.equals(but) ? 0 : greatest(table(surface)[scatter]);
        }
        return sum;
    }

    /** One factor for all surfaces. */
    Estimate common() {
        double[][] support = support();
        double[] profile = new double[factors.length];
        for (int f = 0; f < factors.length; f++) {
            profile[f] = Double.NEGATIVE_INFINITY;
            for (double[] row : support) {
                profile[f] = Math.max(profile[f], row[f]);
            }
        }
        int all = trials.values().stream().mapToInt(n -> n).sum();
        return Likelihood.estimate("all surfaces", factors, profile, all);
    }

    /** Scatters by factors with one factor for all surfaces, greatest 0. */
    double[][] support() {
        double[][] sum = new double[scatters.length][factors.length];
        double most = Double.NEGATIVE_INFINITY;
        for (int s = 0; s < scatters.length; s++) {
            for (int f = 0; f < factors.length; f++) {
                for (String surface : bySurface.keySet()) {
                    sum[s][f] += table(surface)[s][f];
                }
                most = Math.max(most, sum[s][f]);
            }
        }
        for (double[] row : sum) {
            for (int f = 0; f < row.length; f++) {
                row[f] -= most;
            }
        }
        return sum;
    }

    private double[][] table(String surface) {
        return bySurface.getOrDefault(surface, new double[scatters.length][factors.length]);
    }

    private static double greatest(double[] values) {
        double most = Double.NEGATIVE_INFINITY;
        for (double v : values) {
            most = Math.max(most, v);
        }
        return most;
    }
}
