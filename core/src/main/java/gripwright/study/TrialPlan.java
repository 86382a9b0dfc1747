package gripwright.study;

import java.util.List;
import java.util.Optional;

/**
 * Trials to be made with a built hand, in their order.
 *
 * @param seed of order and places
 * @param hands labels, one or more
 * @param expected success that the number was found for [-]
 * @param perHand trials of each hand that the goal asks for; a few more are planned where objects would get none
 * @param parts how many trials of each object and grip, per hand
 * @param trials in order
 */
public record TrialPlan(
        long seed,
        List<String> hands,
        PlanGoal goal,
        double expected,
        int perHand,
        List<Part> parts,
        List<Planned> trials) {
    /** An object with a grip, and how often each hand tries it. */
    public record Part(String object, String grip, int perHand) {}

    /**
     * One trial.
     *
     * @param number from 1 on, in the order of the plan
     * @param day from 1 on
     * @param block from 1 on; a block holds each hand once, one hand after the other
     * @param placed where to put the object; empty: wherever it is found in use
     * @param pair label shared by the hands at one place; empty with one hand
     */
    public record Planned(
            int number,
            int day,
            int block,
            String hand,
            String object,
            String grip,
            Optional<Placed> placed,
            String pair) {}

    public TrialPlan {
        hands = List.copyOf(hands);
        parts = List.copyOf(parts);
        trials = List.copyOf(trials);
    }

    public int days() {
        return trials.isEmpty() ? 0 : trials.get(trials.size() - 1).day();
    }

    public int blocks() {
        return trials.isEmpty() ? 0 : trials.get(trials.size() - 1).block();
    }
}
