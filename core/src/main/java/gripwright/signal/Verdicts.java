package gripwright.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** What stands out among the taxels of a pad, and why it probably does. */
final class Verdicts {
    private static final double AIR = 0.5;
    private static final double SOME_AIR = 0.75;
    private static final double MANY = 3;
    private static final int LEAST_PEERS = 3;

    private Verdicts() {}

    static List<Taxel> of(List<Taxel> taxels, String unit) {
        return taxels.stream()
                .map(t -> t.state() == Taxel.State.FITTED ? judged(t, peers(t, taxels), unit) : t)
                .toList();
    }

    private static List<Taxel> peers(Taxel t, List<Taxel> all) {
        return all.stream()
                .filter(o -> o.pad().equals(t.pad()) && o.state() == Taxel.State.FITTED)
                .toList();
    }

    private static double median(List<Taxel> taxels, FigureKind kind) {
        return RobustWeights.median(taxels.stream()
                .mapToDouble(t -> value(t, kind))
                .filter(Double::isFinite)
                .toArray());
    }

    private static double value(Taxel t, FigureKind kind) {
        Figure figure = t.figures().get(kind);
        return figure == null ? Double.NaN : figure.value();
    }

    private static Taxel judged(Taxel t, List<Taxel> peers, String unit) {
        if (peers.size() < LEAST_PEERS) {
            return t;
        }
        List<String> says = new ArrayList<>();
        boolean recast = sensitivity(t, peers, says);
        recast |= offset(t, peers, unit, says);
        drift(t, peers, says);
        ratio(t, peers, FigureKind.HYSTERESIS, 0.02, "air, rubber coming off, or a contact that grows", says);
        ratio(t, peers, FigureKind.NOISE, 0, "a loose contact or a poor supply", says);
        return t.judged(String.join("; ", says), recast);
    }

    private static String percent(double share) {
        return share < 0.1 ? Words.number(100 * Math.rint(share * 1e3) / 1e3) : String.valueOf(Math.round(100 * share));
    }

    private static boolean sensitivity(Taxel t, List<Taxel> peers, List<String> says) {
        double share = value(t, FigureKind.SENSITIVITY) / median(peers, FigureKind.SENSITIVITY);
        if (!(share < SOME_AIR)) {
            return false;
        }
        double ambient = value(t, FigureKind.AMBIENT) / median(peers, FigureKind.AMBIENT);
        String also =
                ambient < SOME_AIR ? ", and follows the ambient pressure by " + percent(ambient) + " % as they do" : "";
        says.add("reads " + percent(share) + " % of what its pad's taxels usually read" + also + ": "
                + (share < AIR ? "air trapped in the chip" : "some air left in the chip, or thicker rubber"));
        return share < AIR;
    }

    private static boolean offset(Taxel t, List<Taxel> peers, String unit, List<String> says) {
        double usual = median(peers, FigureKind.OFFSET);
        double[] off = peers.stream()
                .mapToDouble(p -> Math.abs(value(p, FigureKind.OFFSET) - usual))
                .toArray();
        double scale = RobustWeights.MAD * RobustWeights.median(off);
        double span = median(peers, FigureKind.FULL_SCALE);
        double above = value(t, FigureKind.OFFSET) - usual;
        if (!(above > Math.max(5 * scale, 0.2 * span))) {
            return false;
        }
        says.add("reads " + Words.number(above) + " " + unit + " above the usual offset at rest, "
                + percent(above / span) + " % of full scale: pre-load from shrinking rubber or a bent board");
        return above > span;
    }

    private static void drift(Taxel t, List<Taxel> peers, List<String> says) {
        double own = slow(t);
        double usual = RobustWeights.median(peers.stream()
                .mapToDouble(Verdicts::slow)
                .filter(Double::isFinite)
                .toArray());
        if (own > MANY * usual && own > value(t, FigureKind.DRIFT)) {
            says.add("drifts " + Words.number(own / usual) + " times as much as usual at rest: temperature or creep");
        }
    }

    private static double slow(Taxel t) {
        return t.allan().isEmpty()
                ? Double.NaN
                : Objects.requireNonNull(t.allan().get(t.allan().size() - 1)).deviation();
    }

    private static void ratio(
            Taxel t, List<Taxel> peers, FigureKind kind, double least, String cause, List<String> says) {
        double own = value(t, kind);
        double usual = median(peers, kind);
        Figure figure = t.figures().get(kind);
        if (figure != null && figure.interval().low() > MANY * usual && own > least) {
            says.add(kind.words() + " is " + Words.number(own / usual) + " times the usual: " + cause);
        }
    }
}
