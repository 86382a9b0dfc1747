package gripwright.study;

import gripwright.stats.RankBiserial;
import gripwright.study.TrialsResult.Influence;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** How much each sampled input decides between held and not. */
public final class Influences {
    /** The definition, for printing beside a table. */
    public static final String DEFINITION =
            "Influence: take a failed run and a held one at random; the chance that the failed one has the greater value"
                    + " of the input, minus the chance that it has the smaller one (rank-biserial correlation), as a"
                    + " magnitude from 0 (no bearing on the outcome) to 1 (decides alone). It is worked out for the value"
                    + " and for its distance from the nominal value, and the stronger of the two is given, so that"
                    + " failures on both sides show. Undecided runs are left out. Inputs that act only together, or only"
                    + " in the middle of their range, can matter more than this number says.";

    private Influences() {}

    /** Strongest first; empty if all decided runs held, or all failed. */
    static List<Influence> of(List<Run> runs, List<SampledInput> varying) {
        List<Run> held = runs.stream().filter(Run::held).toList();
        List<Run> failed =
                runs.stream().filter(run -> run.decided() && !run.held()).toList();
        if (held.isEmpty() || failed.isEmpty()) {
            return List.of();
        }
        return varying.stream()
                .map(input -> new Influence(input.words(), strength(input, failed, held)))
                .sorted(Comparator.comparingDouble(Influence::strength).reversed())
                .toList();
    }

    /**
     * The strength [-] that the strongest of several inputs without any bearing exceeds by luck with a chance of at
     * most about 5 % (Bonferroni: each input is looked at twice, by value and by distance).
     *
     * @param inputs how many were looked at, 1 or more
     */
    public static double noise(Proportion success, int inputs) {
        return RankBiserial.noise(success.successes(), success.trials() - success.successes(), 0.05 / (2 * inputs));
    }

    private static double strength(SampledInput input, List<Run> failed, List<Run> held) {
        ToDoubleFunction<Run> value = run -> input.deviation(run.conditions());
        ToDoubleFunction<Run> distance = run -> Math.abs(input.deviation(run.conditions()));
        return Math.max(
                Math.abs(RankBiserial.of(values(failed, value), values(held, value))),
                Math.abs(RankBiserial.of(values(failed, distance), values(held, distance))));
    }

    private static double[] values(List<Run> runs, ToDoubleFunction<Run> what) {
        return runs.stream().mapToDouble(what).toArray();
    }
}
