package gripwright.study;

import gripwright.check.Check;
import gripwright.closing.Conditions;
import gripwright.math.Draws;
import gripwright.math.Streams;
import gripwright.model.GraspObject;
import gripwright.model.Need;
import gripwright.study.TrialPlan.Part;
import gripwright.study.TrialPlan.Planned;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Plans trials: the objects share the number by their weights, blocks hold a fair mix of objects, hands and objects come
 * in random order within a block, places are drawn from the need's scatter.
 *
 * <p>So wear, light and the operator's skill, which change over days, meet all hands and objects alike (randomised
 * blocks; R. A. Fisher, The Design of Experiments, 1935).
 *
 * @param need whose objects and scatter count
 * @param parts object and grip, each once
 * @param perDay trials that one day has room for
 * @param setPlaces the operator puts objects at drawn places; else they are found where they are in use
 */
public record TrialPlanner(Need need, List<Choice> parts, int perDay, boolean setPlaces) {
    /** Fewest trials of an object and grip by one hand. */
    public static final int FEWEST = 2;

    private static final double MILLIMETRE = 1e-3;
    private static final double GOLDEN = 0.6180339887;

    /** An object with the grip it is tried with. */
    public record Choice(String object, String grip) {}

    public TrialPlanner {
        parts = List.copyOf(parts);
        Check.that(!parts.isEmpty(), "a plan needs at least one object");
        Check.that(perDay >= 1, "trials per day are " + perDay + "; there must be at least 1");
    }

    /** Every object with each grip it names. */
    public static List<Choice> all(Need need) {
        return need.objects().stream()
                .flatMap(o -> o.grips().stream().map(g -> new Choice(o.name(), g)))
                .toList();
    }

    /** Every object with the first grip it names. */
    public static List<Choice> first(Need need) {
        return need.objects().stream()
                .map(o -> new Choice(o.name(), o.grips().get(0)))
                .toList();
    }

    /**
     * Makes the plan; the same input gives the same plan.
     *
     * @param hands labels, each once
     */
    public TrialPlan plan(List<String> hands, PlanGoal goal, double expected, long seed) {
        Check.that(
                !hands.isEmpty() && hands.stream().distinct().count() == hands.size(),
                "hands are " + hands + "; expected one or more different labels");
        int perHand = goal.trials(expected);
        int[] counts = shared(perHand);
        List<Part> shares = IntStream.range(0, parts.size())
                .mapToObj(i -> new Part(parts.get(i).object(), parts.get(i).grip(), counts[i]))
                .toList();
        return new TrialPlan(seed, hands, goal, expected, perHand, shares, ordered(hands, counts, paired(goal), seed));
    }

    /** By weight, the greatest remainders rounded up, none below the fewest. */
    private int[] shared(int all) {
        double[] weight = parts.stream().mapToDouble(this::weight).toArray();
        double sum = 0;
        for (double w : weight) {
            sum += w;
        }
        int[] counts = new int[weight.length];
        double[] rest = new double[weight.length];
        int left = all;
        for (int i = 0; i < counts.length; i++) {
            double exact = sum > 0 ? all * weight[i] / sum : (double) all / counts.length;
            counts[i] = (int) exact;
            rest[i] = exact - counts[i];
            left -= counts[i];
        }
        List<Integer> order = IntStream.range(0, counts.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -rest[i]))
                .toList();
        for (int i = 0; i < left; i++) {
            counts[order.get(i % order.size())]++;
        }
        for (int i = 0; i < counts.length; i++) {
            counts[i] = Math.max(FEWEST, counts[i]);
        }
        return counts;
    }

    // An object with two grips counts once: its grips share its weight.
    private double weight(Choice choice) {
        GraspObject object = need.object(choice.object());
        long grips =
                parts.stream().filter(p -> p.object().equals(choice.object())).count();
        return object.weight() / grips;
    }

    private List<Planned> ordered(List<String> hands, int[] counts, boolean paired, long seed) {
        Streams streams = new Streams(seed, "trial plan");
        Sampler sampler = new Sampler(need.placement(), Variation.DEFAULT, streams);
        int blocks = IntStream.of(counts).max().orElse(0);
        List<Planned> trials = new ArrayList<>();
        int[] used = new int[counts.length];
        int pairs = 0;
        int day = 1;
        int today = 0;
        for (int block = 1; block <= blocks; block++) {
            List<Integer> members = new ArrayList<>();
            for (int i = 0; i < counts.length; i++) {
                if (spread(block, counts[i], blocks, i) > spread(block - 1, counts[i], blocks, i)) {
                    members.add(i);
                }
            }
            int size = members.size() * hands.size();
            if (today > 0 && today + size > perDay) {
                day++;
                today = 0;
            }
            List<String> labels = new ArrayList<>();
            List<Integer> samples = new ArrayList<>();
            for (int i : members) {
                labels.add(hands.size() > 1 && setPlaces && paired ? "p" + ++pairs : "");
                samples.add(used[i]++);
            }
            Draws draws = streams.draws("order of block", block);
            for (String hand : shuffled(hands, h -> draws.uniform("hand " + h))) {
                List<Integer> order = IntStream.range(0, members.size()).boxed().toList();
                for (int m : shuffled(order, k -> draws.uniform(hand + " " + k))) {
                    if (today >= perDay) { // a block greater than a day
                        day++;
                        today = 0;
                    }
                    Choice choice = parts.get(members.get(m));
                    today++;
                    trials.add(new Planned(
                            trials.size() + 1,
                            day,
                            block,
                            hand,
                            choice.object(),
                            choice.grip(),
                            place(sampler, choice, paired ? "" : hand, samples.get(m)),
                            labels.get(m)));
                }
            }
        }
        return trials;
    }

    /** Part i is in counts[i] of the blocks, evenly, each part starting at another block. */
    private static long spread(int block, int count, int blocks, int part) {
        double start = part * GOLDEN % 1;
        return (long) Math.floor((double) block * count / blocks + start);
    }

    /** Hands meet the same places unless the goal says otherwise. */
    private static boolean paired(PlanGoal goal) {
        return !(goal instanceof PlanGoal.Difference difference) || difference.paired();
    }

    /** @param hand empty if all hands share the place */
    private Optional<Placed> place(Sampler sampler, Choice choice, String hand, int sample) {
        String subject = choice.object() + " with " + choice.grip() + (hand.isEmpty() ? "" : " by " + hand);
        return setPlaces ? Optional.of(place(sampler.conditions(subject, sample))) : Optional.empty();
    }

    /** To whole millimetres and degrees, as one can set them. */
    private static Placed place(Conditions c) {
        return new Placed(
                Math.rint(c.x() / MILLIMETRE) * MILLIMETRE,
                Math.rint(c.y() / MILLIMETRE) * MILLIMETRE,
                Math.toRadians(Math.rint(Math.toDegrees(c.turn()))));
    }

    private static <T> List<T> shuffled(List<T> all, ToDoubleFunction<T> key) {
        return all.stream().sorted(Comparator.comparingDouble(key)).toList();
    }
}
