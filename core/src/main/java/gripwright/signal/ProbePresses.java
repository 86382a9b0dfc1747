package gripwright.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** Presses of single taxels by a probe: what every taxel answers to them. */
final class ProbePresses {
    private static final double LEAST = 0.5;
    private static final double NEXT_TO_NOTHING = 0.01;
    private static final double MOST_LOOP = 0.1;

    private final CleanLog log;
    private final double[] sharp;
    private final Map<Integer, List<Span>> visits;

    /**
     * @param sharp force per bin, as it is: a smoothed one rounds the short presses [N]
     * @param smoothed the same smoothed
     */
    ProbePresses(CleanLog log, double[] sharp, double[] smoothed) {
        this.log = log;
        this.sharp = sharp;
        this.visits = visits(log, smoothed);
    }

    /** Whether slow presses come from a plate on all taxels. */
    static boolean hasPlate(CleanLog log, LoadCourse course) {
        if (log.log().pressed().length == 0) {
            return true;
        }
        double[] pressed = log.bins().mean(log.log().pressed());
        for (Span load : course.loads()) {
            if (load.length() * log.bins().step() > 1.5 && mostly(pressed, load) == 0) {
                return true;
            }
        }
        return false;
    }

    /** The number that most of a load is marked with; -1 if it is not one number. */
    private static int mostly(double[] pressed, Span load) {
        double middle = pressed[(load.from() + load.to()) / 2];
        return Double.isNaN(middle) || middle != Math.rint(middle) ? -1 : (int) middle;
    }

    /** Loads of at least half a second on single taxels, by number, from before they begin until after they end. */
    private static Map<Integer, List<Span>> visits(CleanLog log, double[] smoothed) {
        Map<Integer, List<Span>> visits = new LinkedHashMap<>();
        if (log.log().pressed().length > 0) {
            double[] pressed = log.binned(log.log().pressed());
            double[] alone = new double[smoothed.length];
            Arrays.setAll(alone, b -> pressed[b] >= 0.5 ? smoothed[b] : 0);
            double step = log.bins().step();
            for (Span load : LoadCourse.of(alone, step).loads()) {
                int number = mostly(pressed, load);
                if (number >= 1 && load.length() * step >= LEAST) {
                    visits.computeIfAbsent(number, n -> new ArrayList<>()).add(whole(load, smoothed));
                }
            }
        }
        return visits;
    }

    /** Widened to where the force is next to nothing. */
    private static Span whole(Span load, double[] force) {
        double none = NEXT_TO_NOTHING * LoadCourse.peak(force, load);
        int from = load.from();
        int to = load.to();
        while (from > 0 && force[from] > none) {
            from--;
        }
        while (to < force.length && force[to] > none) {
            to++;
        }
        return new Span(from, to);
    }

    /** Whether a load falls together with the press of a single taxel. */
    boolean meets(Span load) {
        return visits.values().stream()
                .flatMap(List::stream)
                .anyMatch(v -> v.from() < load.to() && load.from() < v.to());
    }

    /** Slope of each taxel for each that is pressed, in the log's order; null where one was not pressed. */
    CrossTalk.Slope[][] slopes(List<Taxel> fitted) {
        int k = log.channels().size();
        CrossTalk.Slope[][] slopes = new CrossTalk.Slope[k][];
        visits.forEach((number, loads) -> {
            int at = log.log().position(number);
            if (at >= 0) {
                slopes[at] = new CrossTalk.Slope[k];
                double play = playUnderProbe(at, fitted, loads);
                for (int c = 0; c < k; c++) {
                    slopes[at][c] = CrossTalk.slope(
                            log.bins().mean(log.readings(c)),
                            sharp,
                            loads,
                            log.bins().step(),
                            play,
                            c == at);
                }
            }
        });
        return slopes;
    }

    /** Play counts in what the taxel feels, and a probe makes it feel more per newton than a plate does. */
    private double playUnderProbe(int at, List<Taxel> fitted, List<Span> loads) {
        Optional<TaxelModel> model =
                fitted.isEmpty() ? Optional.empty() : fitted.get(at).model();
        if (model.isEmpty()) {
            return 0;
        }
        double[] readings = log.bins().mean(log.readings(at));
        double slope = CrossTalk.slope(readings, sharp, loads, log.bins().step(), 0, true)
                .value();
        double play = model.get().play() * model.get().sensitivity() / slope;
        Span first = loads.get(0);
        double most = MOST_LOOP * sharp[(first.from() + first.to()) / 2];
        return play > 0 && play < most ? play : 0;
    }

    /** What each sound taxel reads when another is pressed, as a share. */
    List<Calibration.Share> shares(List<Taxel> taxels) {
        CrossTalk.Slope[][] slopes = slopes(taxels);
        List<Calibration.Share> shares = new ArrayList<>();
        for (int j = 0; j < slopes.length; j++) {
            if (slopes[j] == null || taxels.get(j).state() != Taxel.State.FITTED) {
                continue;
            }
            for (int c = 0; c < slopes.length; c++) {
                if (taxels.get(c).state() == Taxel.State.FITTED && Double.isFinite(slopes[j][c].value())) {
                    shares.add(CrossTalk.share(
                            taxels.get(j).number(), taxels.get(c).number(), slopes[j][c], slopes[j][j]));
                }
            }
        }
        return shares;
    }

    /** Why there is no cross-talk, and what to record. */
    Optional<String> refusal() {
        if (log.log().pressed().length == 0) {
            return Optional.of(
                    "the log does not say which taxel is pressed: press one after the other with a small probe"
                            + " and record its number in a column (pads.yaml, readings: pressed); swapped taxels cannot be found"
                            + " without it either");
        }
        return visits.isEmpty()
                ? Optional.of("no taxel was pressed alone; press one after the other with a small probe")
                : Optional.empty();
    }

    /** Numbers in the column that no taxel has. */
    List<String> unknown() {
        return new TreeSet<>(visits.keySet())
                .stream()
                        .filter(number -> log.log().position(number) < 0)
                        .map(number -> "column pressed holds " + number + ", but there are only "
                                + log.channels().size() + " taxels")
                        .toList();
    }
}
