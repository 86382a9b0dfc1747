package gripwright.study;

import gripwright.closing.PressResult;
import gripwright.closing.PullResult;
import gripwright.model.Press;

/** What a task of a free finger came to, in sentences that carry their numbers. */
public final class PressFindings {
    private static final double STRAIGHT = Math.toRadians(0.5);

    private PressFindings() {}

    /** The answer, what the finger does, what the hold bears. */
    public static String of(PressResult p) {
        return "Task " + p.task().name() + ", " + p.task().finger() + " with "
                + newtons(p.task().force())
                + (p.task().travel() > 0
                        ? " over " + Phrases.millimetres(p.task().travel())
                        : "") + ": "
                + answer(p) + ". " + Phrases.sentenceCase(finger(p)) + ". " + hold(p) + ".";
    }

    private static String answer(PressResult p) {
        return switch (p.verdict()) {
            case WORKS -> "works, up to " + newtons(p.greatest());
            case NOT_REACHED -> "the finger does not reach it";
            case UNDECIDED -> "undecided (" + p.trouble() + ")";
            default -> "does not work, " + p.verdict().words();
        };
    }

    /** What the finger does, without its end. */
    public static String finger(PressResult p) {
        Press task = p.task();
        if (p.reach() != PressResult.Reach.REACHES) {
            return switch (p.reach()) {
                case BESIDE ->
                    "the place lies " + Phrases.millimetres(p.miss())
                            + " or more from the pad, beside the finger's plane";
                case PAST -> "the finger stands under the place before it is pulled";
                case BLOCKED ->
                    p.met() + " meets the object first, " + Phrases.millimetres(p.miss()) + " from the place";
                default ->
                    "with up to " + newtons(task.greatestTension()) + " on its own line its pad comes no nearer than "
                            + Phrases.millimetres(p.miss());
            };
        }
        StringBuilder out = new StringBuilder("it touches the place at ")
                .append(newtons(p.touchTension()))
                .append(" on its own line");
        if (Double.isNaN(p.fingerForce())) {
            return out.toString();
        }
        out.append(" and presses with ")
                .append(newtons(p.fingerForce()))
                .append(" at ")
                .append(newtons(task.greatestTension()));
        if (!Double.isNaN(p.lastForce())) {
            out.append(", ").append(newtons(p.lastForce())).append(" once all has given way");
        } else if (p.followed() < task.travel()) {
            out.append(", and can follow ").append(Phrases.millimetres(p.followed()));
            out.append(p.met().isEmpty() ? "" : ", then " + p.met() + " meets the object");
        }
        if (p.off() > STRAIGHT) {
            out.append(", ").append(Phrases.twoDigits(Math.toDegrees(p.off()))).append(" deg off the direction");
        }
        if (!Double.isNaN(p.neededTension())) {
            out.append("; ").append(newtons(p.neededTension())).append(" on the line would do at the start");
        }
        return out.append(p.slides() ? "; its pad slides meanwhile" : "").toString();
    }

    private static String hold(PressResult p) {
        PullResult push = p.push();
        if (push.kind() == PullResult.Kind.UNDECIDED) {
            return "What the hold bears is undecided";
        }
        String first = push.first().isEmpty()
                ? ""
                : "; " + Phrases.list(push.first()) + " gave way first, at " + newtons(push.firstLoad());
        String how = push.kind() == PullResult.Kind.BEYOND
                ? "more than the test pushes"
                : push.kind() == PullResult.Kind.SLIPS
                        ? "its most at " + Phrases.millimetres(push.peakAt())
                        : "still rising at " + Phrases.millimetres(push.reached());
        return "Pushed there, the hold bears " + newtons(p.holdForce()) + ", " + how
                + (push.kind() == PullResult.Kind.BEYOND
                        ? ""
                        : ", where the object "
                                + (p.share() < 0.5
                                        ? "turns (" + Phrases.twoDigits(Math.toDegrees(p.turned())) + " deg)"
                                        : "slides"))
                + (Double.isNaN(p.give())
                        ? ""
                        : ", and gives " + Phrases.millimetres(p.give()) + " under the force wanted")
                + first;
    }

    private static String newtons(double force) {
        return Phrases.twoDigits(force) + " N";
    }
}
