package gripwright.study;

import gripwright.study.DesignChange.Kind;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What changes of a hand do, one at a time, on the same samples.
 *
 * @param seed of the samples
 * @param runs per object for the success
 * @param places per object for the capture area
 * @param span half width of the square over which the places are spread [m]
 * @param objects with the grip each is tried with
 * @param success of the hand as it is, weighted over the objects
 * @param undecided runs of the hand as it is
 * @param area held on average over the objects, weighted [m^2]
 * @param effects in the order of the changes; those not reached before a stop are missing
 * @param wanted how many changes there are
 * @param again the effect of the best change on samples that had no part in choosing it; empty if none helps, or stopped
 */
public record VaryResult(
        long seed,
        int runs,
        int places,
        double span,
        List<Tried> objects,
        TrialsResult.Weighted success,
        int undecided,
        Difference area,
        List<Effect> effects,
        int wanted,
        Optional<Effect> again) {
    /** An object and its grip. */
    public record Tried(String object, String grip) {}

    /**
     * A difference from the hand as it is, or a value.
     *
     * @param value and
     * @param low and
     * @param high ends of its 95 % interval
     */
    public record Difference(double value, double low, double high) {
        /** True if the interval excludes 0. */
        public boolean settled() {
            return low > 0 || high < 0;
        }
    }

    /**
     * What one change does.
     *
     * @param success change of the weighted success [-], paired
     * @param area change of the weighted capture area [m^2], paired
     * @param undecided runs with this change; their pairs are left out
     * @param impossible why there is no such hand, or empty; all numbers are 0 then
     */
    public record Effect(
            String quantity,
            String change,
            Kind kind,
            Difference success,
            Difference area,
            int undecided,
            String impossible) {
        public boolean possible() {
            return impossible.isEmpty();
        }

        /** Quantity and change. */
        public String words() {
            return quantity + " " + change;
        }
    }

    public VaryResult {
        objects = List.copyOf(objects);
        effects = List.copyOf(effects);
    }

    /** Without the second run of the best change. */
    public VaryResult(
            long seed,
            int runs,
            int places,
            double span,
            List<Tried> objects,
            TrialsResult.Weighted success,
            int undecided,
            Difference area,
            List<Effect> effects,
            int wanted) {
        this(seed, runs, places, span, objects, success, undecided, area, effects, wanted, Optional.empty());
    }

    VaryResult with(Optional<Effect> second) {
        return new VaryResult(seed, runs, places, span, objects, success, undecided, area, effects, wanted, second);
    }

    public boolean stopped() {
        return effects.size() < wanted;
    }

    /** Of one kind, the greatest effect on success first, then on area. */
    public List<Effect> ranked(Kind kind) {
        return effects.stream()
                .filter(e -> e.kind() == kind)
                .sorted(Comparator.comparingDouble(
                                (Effect e) -> Math.abs(e.success().value()))
                        .thenComparingDouble(e -> Math.abs(e.area().value()))
                        .reversed())
                .toList();
    }

    /** The design change with the highest lower end of its effect on success; then by area. Empty if none helps. */
    public Optional<Effect> best() {
        return effects.stream()
                .filter(e ->
                        e.kind() == Kind.DESIGN && e.possible() && e.success().value() > 0)
                .max(Comparator.comparingDouble((Effect e) -> e.success().low())
                        .thenComparingDouble(e -> e.area().low()));
    }
}
