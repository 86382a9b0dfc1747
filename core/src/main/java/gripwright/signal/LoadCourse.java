package gripwright.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the force does over a log: taps, cycles, holds, rests.
 *
 * @param step length of a bin [s]
 * @param force aligned with the taxels [N], shape n
 * @param top the greatest force [N]
 * @param loads every stretch under load
 * @param taps short sharp ones
 * @param practice slow cycles up to the top that come first and are not counted
 * @param cycles the slow cycles that are counted, all of about one length
 * @param hold constant force over a while
 * @param restBeforeHold time without force before it [s]
 * @param rest the longest stretch without force
 */
record LoadCourse(
        double step,
        double[] force,
        double top,
        List<Span> loads,
        List<Span> taps,
        List<Span> practice,
        List<Span> cycles,
        Optional<Span> hold,
        double restBeforeHold,
        Span rest) {
    /** Share of the top above which there is load. */
    static final double LOADED = 0.05;

    private static final double TAP_LONGEST = 0.8;
    private static final double TAP_LEAST = 0.2;
    private static final double CYCLE_LEAST = 0.8;
    private static final double CYCLE_SHORTEST = 1.5;
    private static final double PLATEAU = 0.35;
    private static final double STANDING = 0.3;
    private static final double ALIKE = 0.3;
    private static final double HOLD_SHORTEST = 20;
    private static final double HOLD_WITHIN = 0.02;
    private static final double HOLD_LEAST = 0.3;

    /** Cycles that come before the counted ones. */
    static final int PRACTICE = 3;

    static LoadCourse of(double[] force, double step) {
        double top = 0;
        for (double f : force) {
            top = Math.max(top, Double.isNaN(f) ? 0 : f);
        }
        List<Span> loads = loads(force, LOADED * top);
        List<Span> taps = new ArrayList<>();
        List<Span> slow = new ArrayList<>();
        for (Span load : loads) {
            double peak = peak(force, load);
            if (load.length() * step < TAP_LONGEST && peak > TAP_LEAST * top) {
                taps.add(load);
            } else if (peak >= CYCLE_LEAST * top && isCycle(force, load, peak, step)) {
                slow.add(load);
            }
        }
        Span hold = null;
        double before = 0;
        for (int k = 0; k < loads.size(); k++) {
            Span flat = flat(force, loads.get(k), top);
            if (flat.length() * step >= HOLD_SHORTEST && (hold == null || flat.length() > hold.length())) {
                hold = flat;
                before = step
                        * (loads.get(k).from() - (k == 0 ? 0 : loads.get(k - 1).to()));
            }
        }
        List<Span> practice = new ArrayList<>();
        List<Span> cycles = new ArrayList<>();
        sort(slow, practice, cycles);
        return new LoadCourse(
                step,
                force,
                top,
                List.copyOf(loads),
                List.copyOf(taps),
                List.copyOf(practice),
                List.copyOf(cycles),
                Optional.ofNullable(hold),
                before,
                longestRest(loads, force.length));
    }

    private static List<Span> loads(double[] force, double threshold) {
        List<Span> loads = new ArrayList<>();
        int from = -1;
        for (int i = 0; i <= force.length; i++) {
            boolean on = i < force.length && force[i] > threshold;
            if (on && from < 0) {
                from = i;
            } else if (!on && from >= 0) {
                loads.add(new Span(from, i));
                from = -1;
            }
        }
        return loads;
    }

    static double peak(double[] force, Span span) {
        double peak = 0;
        for (int i = span.from(); i < span.to(); i++) {
            peak = Math.max(peak, force[i]);
        }
        return peak;
    }

    /** One slow rise and one slow fall without stops on the way. */
    private static boolean isCycle(double[] force, Span load, double peak, double step) {
        if (load.length() * step < CYCLE_SHORTEST) {
            return false;
        }
        int near = 0;
        int standing = 0;
        int moving = 0;
        int reach = Math.max(1, (int) Math.round(0.2 / step));
        double usual = 2 * peak / (load.length() * step);
        for (int i = load.from(); i < load.to(); i++) {
            if (force[i] > (1 - 0.03) * peak) {
                near++;
            } else {
                moving++;
                int a = Math.max(load.from(), i - reach);
                int b = Math.min(load.to() - 1, i + reach);
                if (b > a && Math.abs(force[b] - force[a]) < 0.25 * usual * (b - a) * step) {
                    standing++;
                }
            }
        }
        return near <= PLATEAU * load.length() && standing <= STANDING * moving;
    }

    /** The first cycles are practice; of the rest those count that last about as long as most. */
    private static void sort(List<Span> slow, List<Span> practice, List<Span> cycles) {
        int skipped = slow.size() >= PRACTICE + 3 ? PRACTICE : slow.size() >= 3 ? 1 : 0;
        practice.addAll(slow.subList(0, skipped));
        double usual = RobustWeights.median(slow.subList(skipped, slow.size()).stream()
                .mapToDouble(Span::length)
                .toArray());
        for (Span one : slow.subList(skipped, slow.size())) {
            if (Math.abs(one.length() - usual) <= ALIKE * usual) {
                cycles.add(one);
            }
        }
    }

    /** The longest stretch within 2 % of the top about one force. */
    private static Span flat(double[] force, Span load, double top) {
        Span best = new Span(load.from(), load.from());
        int from = load.from();
        while (from < load.to()) {
            int to = from;
            while (to < load.to()
                    && Math.abs(force[to] - force[from]) < HOLD_WITHIN * top
                    && force[to] > HOLD_LEAST * top) {
                to++;
            }
            if (to - from > best.length()) {
                best = new Span(from, to);
            }
            from = Math.max(from + 1, from + (to - from) / 4);
        }
        return best;
    }

    private static Span longestRest(List<Span> loads, int count) {
        Span best = new Span(0, 0);
        int from = 0;
        for (Span load : loads) {
            if (load.from() - from > best.length()) {
                best = new Span(from, load.from());
            }
            from = load.to();
        }
        return count - from > best.length() ? new Span(from, count) : best;
    }

    /** First and last group of at least three taps close together; the first only if it lies in the first third. */
    Optional<Span> tapsAtStart() {
        return groups().stream().filter(g -> g.to() < force.length / 3).findFirst();
    }

    Optional<Span> tapsAtEnd() {
        List<Span> groups = groups();
        return groups.isEmpty() || groups.get(groups.size() - 1).from() < 2 * force.length / 3
                ? Optional.empty()
                : Optional.of(groups.get(groups.size() - 1));
    }

    private List<Span> groups() {
        List<Span> groups = new ArrayList<>();
        int apart = (int) Math.round(4 / step);
        int margin = (int) Math.round(0.6 / step);
        for (int k = 0; k < taps.size(); ) {
            int last = k;
            while (last + 1 < taps.size()
                    && taps.get(last + 1).from() - taps.get(last).to() < apart) {
                last++;
            }
            if (last - k + 1 >= 3) {
                groups.add(new Span(
                        Math.max(0, taps.get(k).from() - Math.max(2, margin / 8)),
                        Math.min(force.length, taps.get(last).to() + margin)));
            }
            k = last + 1;
        }
        return groups;
    }
}
