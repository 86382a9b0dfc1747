package gripwright.study;

import gripwright.closing.Endurance;
import gripwright.closing.GraspStiffness;
import gripwright.closing.HoldDetail;
import gripwright.closing.Kept;
import gripwright.closing.LoadResult;
import gripwright.closing.PullResult;
import gripwright.closing.Release;
import gripwright.contact.WrenchSpace;
import gripwright.math.Vec3;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What the tests of a hold say, in sentences that carry their numbers. */
public final class HoldFindings {
    /** What no figure of merit may hide. */
    public static final String CAUTION =
            "A hand with fewer motors than joints cannot choose its contact forces: the pulls decide, the wrench measure only"
                    + " ranks contact sets.";

    private final String object;
    private final HoldDetail hold;

    private HoldFindings(String object, HoldDetail hold) {
        this.object = object;
        this.hold = hold;
    }

    /** Sentences, the most telling first; one that says why there are none if the closing did not end held. */
    public static List<String> of(String object, HoldDetail hold) {
        return new HoldFindings(object, hold).all();
    }

    /** Name of a direction: +x, or its components. */
    public static String axis(Vec3 v) {
        double[] c = {v.x(), v.y(), v.z()};
        String names = "xyz";
        for (int i = 0; i < 3; i++) {
            if (Math.abs(Math.abs(c[i]) - 1) < 1e-9) {
                return (c[i] > 0 ? "+" : "-") + names.charAt(i);
            }
        }
        return "(" + two(c[0]) + ", " + two(c[1]) + ", " + two(c[2]) + ")";
    }

    private static String two(double v) {
        BigDecimal d = new BigDecimal(v).setScale(2, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return d.signum() == 0 ? "0" : d.toPlainString();
    }

    private List<String> all() {
        if (!hold.tested()) {
            return List.of("The " + object + " was not held, so there is no hold to test: "
                    + hold.closing().summary().outcome().words() + ".");
        }
        List<String> out = new ArrayList<>();
        hold.presses().forEach(p -> out.add(PressFindings.of(p)));
        pulls(out);
        turns(out);
        transport(out);
        gravity(out);
        hold.stiffness().ifPresent(k -> out.add(stiffness(k)));
        hold.wrenches().ifPresent(q -> out.add(wrenches(q)));
        hold.release().ifPresent(r -> out.add(release(r)));
        if (hold.undecided() > 0) {
            out.add(Phrases.plural(hold.undecided(), "test") + " did not converge and "
                    + (hold.undecided() == 1 ? "counts" : "count") + " as undecided, not as held.");
        }
        return out;
    }

    private static List<PullResult> decided(List<PullResult> tests) {
        return tests.stream()
                .filter(p -> p.kind() != PullResult.Kind.UNDECIDED)
                .sorted(Comparator.comparingDouble(PullResult::peak))
                .toList();
    }

    private void pulls(List<String> out) {
        List<PullResult> order = decided(hold.pulls());
        if (order.isEmpty()) {
            return;
        }
        PullResult weak = order.get(0);
        PullResult strong = order.get(order.size() - 1);
        out.add("Pulled, the " + object + " is held least towards " + axis(weak.axis()) + ": "
                + Phrases.twoDigits(weak.peak()) + " N, where it " + how(weak, false) + ". Hardest is "
                + axis(strong.axis()) + ": " + (strong.kind() == PullResult.Kind.BEYOND ? "over " : "")
                + Phrases.twoDigits(strong.peak()) + " N. Its weight is "
                + Phrases.twoDigits(hold.closing().weight().length()) + " N.");
    }

    private static String how(PullResult p, boolean turning) {
        String first = p.first().isEmpty() ? "" : "; " + Phrases.list(p.first()) + " gave way first";
        return switch (p.kind()) {
            case SLIPS -> "slips at " + moved(p.peakAt(), turning) + first;
            case YIELDS -> "yields: the load still rose at " + moved(p.reached(), turning) + first;
            case BEYOND -> "held all that the test pulls";
            case UNDECIDED -> "is undecided";
        };
    }

    private static String moved(double d, boolean turning) {
        return turning ? Phrases.twoDigits(Math.toDegrees(d)) + " deg" : Phrases.millimetres(d);
    }

    private void turns(List<String> out) {
        List<PullResult> order = decided(hold.turns());
        if (!order.isEmpty()) {
            PullResult weak = order.get(0);
            out.add("Turned, it is held least about " + axis(weak.axis()) + ": " + Phrases.twoDigits(weak.peak())
                    + " N*m, where it " + how(weak, true) + ".");
        }
    }

    private void transport(List<String> out) {
        double a = hold.plan().acceleration();
        if (a > 0) {
            List<String> lost = new ArrayList<>();
            hold.pulses().stream().filter(l -> l.kept() == Kept.LOST).forEach(l -> lost.add(axis(l.axis())));
            hold.steadyTurn().filter(l -> l.kept() == Kept.LOST).ifPresent(l -> lost.add("a steady turn"));
            boolean unsure = hold.pulses().stream().anyMatch(l -> l.kept() == Kept.UNDECIDED)
                    || hold.steadyTurn().filter(l -> l.kept() == Kept.UNDECIDED).isPresent();
            String size = Phrases.twoDigits(a) + " m/s^2";
            out.add(
                    lost.isEmpty()
                            ? (unsure ? "Where it could be decided, the" : "The") + " transport of the need, " + size
                                    + " as a half-sine pulse along each axis and as a steady turn, is borne."
                            : "The transport of the need, " + size + ", moves it more than "
                                    + Phrases.millimetres(
                                            hold.closing().criteria().sink())
                                    + " in the hand: " + Phrases.list(lost) + ".");
        }
        hold.endurance().stream()
                .min(Comparator.comparingDouble(Endurance::survived))
                .ifPresent(e -> out.add("Greatest acceleration of the hand that keeps it in place: "
                        + (Double.isInfinite(e.failed()) ? "over " : "") + Phrases.twoDigits(e.survived())
                        + " m/s^2 in the worst direction, " + axis(e.axis()) + "."));
    }

    private void gravity(List<String> out) {
        List<LoadResult> all = hold.gravity();
        if (all.isEmpty()) {
            return;
        }
        List<String> lost = all.stream()
                .filter(l -> l.kept() == Kept.LOST)
                .map(l -> axis(l.axis()))
                .toList();
        long unsure = all.stream().filter(l -> l.kept() == Kept.UNDECIDED).count();
        out.add("With the weight turned towards " + all.size() + " directions it stays in place in "
                + (all.size() - lost.size() - unsure)
                + (lost.isEmpty() ? "" : "; not towards " + Phrases.list(lost))
                + (unsure == 0 ? "." : "; undecided in " + unsure + "."));
    }

    private static String stiffness(GraspStiffness k) {
        return "Before anything slides the hold is softest under a push along " + axis(k.softestPush()) + ", "
                + Phrases.twoDigits(k.pushStiffness() / 1e3) + " N/mm, and under a turn about "
                + axis(k.softestTurn()) + ", " + Phrases.twoDigits(k.turnStiffness()) + " N*m/rad"
                + (k.stable() ? "." : "; it is not stable: some small displacement grows by itself.")
                + " Where contacts stand at the edge of sliding it gives more: see the load at "
                + Phrases.millimetres(gripwright.closing.HoldPlan.FIRST_GIVE) + ".";
    }

    private static String wrenches(WrenchSpace.Quality q) {
        String size = q.closed()
                ? "The " + Phrases.plural(q.contacts(), "contact point")
                        + " would close by force if they could press as"
                        + " they liked; largest ball " + Phrases.twoDigits(q.exact()) + " with round friction cones ("
                        + Phrases.twoDigits(q.linearised()) + " with cones of " + q.edges()
                        + " edges), torques divided by " + Phrases.millimetres(q.length()) + ". "
                : "The " + Phrases.plural(q.contacts(), "contact point") + " do not close by force. ";
        return size + CAUTION;
    }

    private static String release(Release r) {
        return switch (r.how()) {
            case LET_GO ->
                "Paying out lets it go: the last finger leaves it with "
                        + Phrases.percent(r.letGoAt()) + " of the tendon still wound"
                        + ", and " + back(r) + ".";
            case NOT_LET_GO ->
                "Paying out does not let it go: "
                        + Phrases.list(r.fingers().stream()
                                .filter(f -> f.force() > 0)
                                .map(f -> f.finger() + " still presses with " + Phrases.twoDigits(f.force()) + " N")
                                .toList())
                        + (Double.isNaN(r.dragged())
                                ? ""
                                : (r.fingers().stream().anyMatch(f -> f.force() > 0) ? "; " : "") + "it moved "
                                        + Phrases.millimetres(r.dragged()) + " as the hand went back")
                        + ".";
            case UNDECIDED -> "Whether paying out lets it go is undecided: " + r.trouble() + ".";
        };
    }

    private static String back(Release r) {
        double worst = Math.toDegrees(r.fingers().stream()
                .mapToDouble(Release.FingerLeft::angle)
                .max()
                .orElse(0));
        return worst < 0.05
                ? "every joint is back at its open angle"
                : "a joint stays " + Phrases.twoDigits(worst) + " deg from its open angle";
    }
}
