package gripwright.study;

import gripwright.closing.Outcome;
import gripwright.stats.BinomialIntervals;
import gripwright.stats.Discordant;
import gripwright.stats.Holm;
import gripwright.stats.Interval;
import gripwright.stats.PairedShares;
import gripwright.stats.SampleSize;
import gripwright.stats.TwoShares;
import gripwright.study.SheetScore.Comparison;
import gripwright.study.SheetScore.Pairs;
import gripwright.study.SheetScore.Rate;
import gripwright.study.SheetScore.Scope;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Counts what filled score sheets hold and compares hands. */
public final class Scoring {
    /** Below this many decided trials an interval is the exact one. */
    public static final int SMALL = 30;

    /** The rules, for printing beside the numbers. */
    public static final String RULES =
            "Shares are of decided trials; intervals are 95 %: exact (Clopper and Pearson 1934) below " + SMALL
                    + " trials, Wilson's (1927) from there on. Pairs at the same places are compared by the exact McNemar"
                    + " test with the interval of Bonett and Price (2012), other trials by Fisher's exact test with"
                    + " Newcombe's interval (1998). Chances of luck are corrected by Holm (1979): those of all trials for"
                    + " the number of pairs of hands, those of objects and grips for their number.";

    private static final double POWER = 0.8;

    private Scoring() {}

    /** Scores trials of one or more hands. */
    public static SheetScore of(List<FieldTrial> trials) {
        List<String> hands = distinct(trials.stream().map(FieldTrial::hand));
        // In one order for all hands, though each met the objects in its own.
        List<String> objects = distinct(trials.stream().map(FieldTrial::object));
        List<String> grips = distinct(trials.stream().map(FieldTrial::grip));
        List<Rate> rates = new ArrayList<>();
        for (String hand : hands) {
            rates.addAll(rates(
                    hand, trials.stream().filter(t -> t.hand().equals(hand)).toList(), objects, grips));
        }
        return new SheetScore(hands, rates, comparisons(hands, trials));
    }

    private static List<Rate> rates(
            String hand, List<FieldTrial> trials, List<String> allObjects, List<String> allGrips) {
        List<Rate> rates = new ArrayList<>();
        List<String> objects = met(allObjects, trials.stream().map(FieldTrial::object));
        List<String> grips = met(allGrips, trials.stream().map(FieldTrial::grip));
        boolean several = false;
        for (String object : objects) {
            List<String> used = met(
                    allGrips,
                    trials.stream().filter(t -> t.object().equals(object)).map(FieldTrial::grip));
            several |= used.size() > 1;
            for (String grip : used) {
                rates.add(rate(Scope.PART, hand, object, grip, trials));
            }
        }
        if (several) {
            objects.forEach(object -> rates.add(rate(Scope.OBJECT, hand, object, "", trials)));
        }
        if (grips.size() > 1) {
            grips.forEach(grip -> rates.add(rate(Scope.GRIP, hand, "", grip, trials)));
        }
        rates.add(rate(Scope.ALL, hand, "", "", trials));
        return rates;
    }

    private static Rate rate(Scope scope, String hand, String object, String grip, List<FieldTrial> trials) {
        List<FieldTrial> counted = trials.stream().filter(of(object, grip)).toList();
        int held = count(counted, FieldTrial::held);
        int decided = count(counted, FieldTrial::decided);
        Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
        Map<TrialReason, Integer> reasons = new EnumMap<>(TrialReason.class);
        for (FieldTrial t : counted) {
            if (!t.held() && t.count() > 0) {
                outcomes.merge(t.outcome(), t.count(), Integer::sum);
                t.reason().ifPresent(r -> reasons.merge(r, t.count(), Integer::sum));
            }
        }
        boolean exact = decided < SMALL;
        Interval interval = exact
                ? BinomialIntervals.clopperPearson(held, decided, BinomialIntervals.CONFIDENCE)
                : BinomialIntervals.wilson(held, decided);
        return new Rate(
                scope,
                hand,
                object,
                grip,
                held,
                decided,
                count(counted, t -> true) - decided,
                interval,
                exact,
                outcomes,
                reasons);
    }

    private static List<Comparison> comparisons(List<String> hands, List<FieldTrial> trials) {
        List<Comparison> totals = new ArrayList<>();
        List<Comparison> parts = new ArrayList<>();
        for (int i = 0; i < hands.size(); i++) {
            for (int j = i + 1; j < hands.size(); j++) {
                totals.add(compared(hands.get(i), hands.get(j), "", "", trials));
                parts.addAll(parts(hands.get(i), hands.get(j), trials));
            }
        }
        List<Comparison> all = new ArrayList<>(corrected(totals));
        all.addAll(corrected(parts));
        return all;
    }

    private static List<Comparison> parts(String first, String second, List<FieldTrial> trials) {
        Map<List<String>, Boolean> tried = new LinkedHashMap<>();
        trials.forEach(t -> tried.put(List.of(t.object(), t.grip()), true));
        return tried.keySet().stream()
                .map(p -> compared(first, second, p.get(0), p.get(1), trials))
                .filter(c -> c.of() > 0 && c.secondOf() > 0)
                .toList();
    }

    private static List<Comparison> corrected(List<Comparison> family) {
        double[] corrected =
                Holm.corrected(family.stream().mapToDouble(Comparison::luck).toArray());
        List<Comparison> out = new ArrayList<>();
        for (int i = 0; i < corrected.length; i++) {
            out.add(family.get(i).corrected(corrected[i]));
        }
        return out;
    }

    private static Comparison compared(
            String first, String second, String object, String grip, List<FieldTrial> trials) {
        List<FieldTrial> a = decided(first, object, grip, trials);
        List<FieldTrial> b = decided(second, object, grip, trials);
        Map<String, FieldTrial> partners = new LinkedHashMap<>();
        b.stream().filter(t -> !t.pair().isEmpty()).forEach(t -> partners.put(key(t), t));
        int[] table = new int[4];
        for (FieldTrial t : a) {
            FieldTrial other = t.pair().isEmpty() ? null : partners.get(key(t));
            if (other != null && other.placed().equals(t.placed())) { // sheets of two plans may share labels
                table[(t.held() ? 0 : 2) + (other.held() ? 0 : 1)]++;
            }
        }
        int pairs = table[0] + table[1] + table[2] + table[3];
        return pairs > 0
                ? paired(first, second, object, grip, table, count(a, t -> true) + count(b, t -> true) - 2 * pairs)
                : separate(first, second, object, grip, a, b);
    }

    private static Comparison paired(String first, String second, String object, String grip, int[] table, int left) {
        int both = table[0];
        int lost = table[1];
        int gained = table[2];
        int neither = table[3];
        int pairs = both + lost + gained + neither;
        double luck = Discordant.exact(gained, lost);
        OptionalInt needed = gained == lost
                ? OptionalInt.empty()
                : more(SampleSize.paired(
                                (double) gained / pairs, (double) lost / pairs, BinomialIntervals.CONFIDENCE, POWER)
                        - pairs);
        return new Comparison(
                first,
                second,
                object,
                grip,
                both + lost,
                pairs,
                both + gained,
                pairs,
                Optional.of(new Pairs(both, gained, lost, neither, Discordant.midP(gained, lost))),
                (double) (gained - lost) / pairs,
                PairedShares.difference(gained, lost, pairs),
                luck,
                luck,
                left,
                needed,
                "");
    }

    private static Comparison separate(
            String first, String second, String object, String grip, List<FieldTrial> a, List<FieldTrial> b) {
        List<FieldTrial> sharedA = a.stream().filter(t -> tried(t, b)).toList();
        List<FieldTrial> sharedB = b.stream().filter(t -> tried(t, a)).toList();
        int n1 = count(sharedA, t -> true);
        int n2 = count(sharedB, t -> true);
        int k1 = count(sharedA, FieldTrial::held);
        int k2 = count(sharedB, FieldTrial::held);
        TwoShares shares = TwoShares.of(k2, n2, k1, n1);
        double p1 = (double) k1 / n1;
        double p2 = (double) k2 / n2;
        OptionalInt needed = n1 == 0 || n2 == 0 || p1 == p2
                ? OptionalInt.empty()
                : more(SampleSize.separate(p1, p2, BinomialIntervals.CONFIDENCE, POWER) - Math.min(n1, n2));
        return new Comparison(
                first,
                second,
                object,
                grip,
                k1,
                n1,
                k2,
                n2,
                Optional.empty(),
                shares.difference(),
                shares.interval(),
                shares.luck(),
                shares.luck(),
                count(a, t -> true) + count(b, t -> true) - n1 - n2,
                needed,
                mixture(sharedA, sharedB, n1, n2));
    }

    /** Totals mislead if one hand met the easy objects more often. */
    private static String mixture(List<FieldTrial> a, List<FieldTrial> b, int n1, int n2) {
        boolean uneven = distinct(a.stream().map(t -> t.object() + "\n" + t.grip())).stream()
                .anyMatch(p -> {
                    int c1 = count(a, t -> (t.object() + "\n" + t.grip()).equals(p));
                    int c2 = count(b, t -> (t.object() + "\n" + t.grip()).equals(p));
                    return Math.abs((double) c1 / n1 - (double) c2 / n2) > 0.02;
                });
        return uneven
                ? "the two met objects and grips in different proportions, so the total compares unlike mixtures; trust the"
                        + " lines of single objects"
                : "";
    }

    private static OptionalInt more(int missing) {
        return missing > 0 ? OptionalInt.of(missing) : OptionalInt.empty();
    }

    private static boolean tried(FieldTrial t, List<FieldTrial> others) {
        return others.stream()
                .anyMatch(o -> o.count() > 0
                        && o.object().equals(t.object())
                        && o.grip().equals(t.grip()));
    }

    private static String key(FieldTrial t) {
        return t.object() + "\n" + t.grip() + "\n" + t.pair();
    }

    private static List<FieldTrial> decided(String hand, String object, String grip, List<FieldTrial> trials) {
        return trials.stream()
                .filter(t -> t.hand().equals(hand) && t.decided())
                .filter(of(object, grip))
                .toList();
    }

    private static Predicate<FieldTrial> of(String object, String grip) {
        return t -> (object.isEmpty() || t.object().equals(object))
                && (grip.isEmpty() || t.grip().equals(grip));
    }

    private static int count(List<FieldTrial> trials, Predicate<FieldTrial> which) {
        return trials.stream().filter(which).mapToInt(FieldTrial::count).sum();
    }

    /** Those of a list that occur, in the order of the list. */
    private static List<String> met(List<String> order, Stream<String> words) {
        List<String> there = distinct(words);
        return order.stream().filter(there::contains).toList();
    }

    private static List<String> distinct(Stream<String> words) {
        return words.distinct().toList();
    }
}
