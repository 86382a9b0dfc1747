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
    private final int possible;
    private final Map<String, double[][][]> byPossible = new LinkedHashMap<>();
    private final Map<String, double[][]> bySurface = new LinkedHashMap<>();
    private final Map<String, Integer> trials = new LinkedHashMap<>();
    private int unplaced;

    /** @param possible number of fitted surfaces over which the likelihood is averaged */
    Evidence(double[] factors, double[] scatters, int possible) {
        this.possible = possible;
        this.factors = factors;
        this.scatters = scatters;
    }

    /** Adds trials of the chances by fitted surface and friction factor, at one scatter factor. */
    void add(String surface, int scatter, double[][] chances, boolean held, int count) {
        double[][][] tables =
                byPossible.computeIfAbsent(surface, k -> new double[possible][scatters.length][factors.length]);
        for (int m = 0; m < possible; m++) {
            for (int f = 0; f < factors.length; f++) {
                double p = chances[m][f];
                tables[m][scatter][f] += count * StrictMath.log(held ? p : 1 - p);
            }
        }
    }

    /** After the last trial: averages the likelihood (not its logarithm) over the fitted surfaces. */
    void close() {
        byPossible.forEach((surface, tables) -> {
            double[][] mean = new double[scatters.length][factors.length];
            for (int s = 0; s < scatters.length; s++) {
                for (int f = 0; f < factors.length; f++) {
                    double most = Double.NEGATIVE_INFINITY;
                    for (double[][] table : tables) {
                        most = Math.max(most, table[s][f]);
                    }
                    double sum = 0;
                    for (double[][] table : tables) {
                        sum += StrictMath.exp(table[s][f] - most);
                    }
                    mean[s][f] = most + StrictMath.log(sum / possible);
                }
            }
            bySurface.put(surface, mean);
        });
    }

    void seen(String surface, int count, boolean withoutPlace) {
        trials.merge(surface, count, Integer::sum);
        unplaced += withoutPlace ? count : 0;
    }

    /**
     * What the evidence says, chances corrected by Holm in two families: first one factor for all surfaces (the factor of
     * the only one, if there is one) and the scatter; then the single surfaces.
     */
    record Said(List<Estimate> friction, Estimate common, Optional<Estimate> scatter) {}

    Said said() {
        List<Estimate> first = new ArrayList<>(List.of(common()));
        if (unplaced > 0) {
            first.add(scatter());
        }
        List<Estimate> main = corrected(first);
        List<Estimate> single =
                corrected(bySurface.keySet().stream().map(this::friction).toList());
        if (single.size() == 1) { // the same question: not asked twice
            single = List.of(single.get(0).corrected(main.get(0).corrected()));
        }
        return new Said(single, main.get(0), unplaced > 0 ? Optional.of(main.get(1)) : Optional.empty());
    }

    private Estimate friction(String surface) {
        double[] profile = new double[factors.length];
        for (int f = 0; f < factors.length; f++) {
            double best = Double.NEGATIVE_INFINITY;
            for (int s = 0; s < scatters.length; s++) {
                best = Math.max(best, table(surface)[s][f] + others(surface, s));
            }
            profile[f] = best;
        }
        return Likelihood.estimate(surface, factors, profile, trials.getOrDefault(surface, 0));
    }

    private Estimate scatter() {
        double[] profile = new double[scatters.length];
        for (int s = 0; s < scatters.length; s++) {
            profile[s] = others("", s);
        }
        return Likelihood.estimate("placement", scatters, profile, unplaced);
    }

    private static List<Estimate> corrected(List<Estimate> family) {
        double[] chances =
                Holm.corrected(family.stream().mapToDouble(Estimate::luck).toArray());
        List<Estimate> out = new ArrayList<>();
        for (int i = 0; i < chances.length; i++) {
            out.add(family.get(i).corrected(chances[i]));
        }
        return out;
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
    private Estimate common() {
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
