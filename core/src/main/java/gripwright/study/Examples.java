package gripwright.study;

import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Picks one typical run of each outcome, for pictures: the one nearest to the middle of all runs with it. */
final class Examples {
    private Examples() {}

    static Map<Outcome, Conditions> of(List<Run> runs, List<SampledInput> varying) {
        Map<Outcome, Conditions> examples = new EnumMap<>(Outcome.class);
        double[] scale =
                varying.stream().mapToDouble(input -> size(runs, input)).toArray();
        for (Outcome outcome : Outcome.values()) {
            List<Run> same =
                    runs.stream().filter(run -> run.outcome() == outcome).toList();
            if (!same.isEmpty()) {
                examples.put(outcome, nearestToMiddle(same, varying, scale));
            }
        }
        return examples;
    }

    private static Conditions nearestToMiddle(List<Run> runs, List<SampledInput> varying, double[] scale) {
        double[] middle = varying.stream()
                .mapToDouble(input -> runs.stream()
                        .mapToDouble(run -> input.deviation(run.conditions()))
                        .average()
                        .orElse(0))
                .toArray();
        Conditions nearest = runs.get(0).conditions();
        double smallest = Double.POSITIVE_INFINITY;
        for (Run run : runs) {
            double distance = 0;
            for (int i = 0; i < middle.length; i++) {
                double off = (varying.get(i).deviation(run.conditions()) - middle[i]) / scale[i];
                distance += off * off;
            }
            if (distance < smallest) {
                smallest = distance;
                nearest = run.conditions();
            }
        }
        return nearest;
    }

    // Root mean square deviation, so that millimetres and degrees weigh alike.
    private static double size(List<Run> runs, SampledInput input) {
        double square = runs.stream()
                .mapToDouble(run -> input.deviation(run.conditions()))
                .map(x -> x * x)
                .average()
                .orElse(0);
        return square > 0 ? Math.sqrt(square) : 1;
    }
}
