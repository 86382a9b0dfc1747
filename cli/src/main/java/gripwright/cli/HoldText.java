package gripwright.cli;

import gripwright.closing.Endurance;
import gripwright.closing.GraspStiffness;
import gripwright.closing.HoldDetail;
import gripwright.closing.HoldPlan;
import gripwright.closing.PressResult;
import gripwright.closing.PullResult;
import gripwright.closing.PullResult.Kind;
import gripwright.study.HoldFindings;
import java.util.stream.Collectors;

/** Tests of a hold in words and small tables. */
final class HoldText {
    private HoldText() {}

    static String of(String object, String grip, HoldDetail hold) {
        StringBuilder text = new StringBuilder();
        text.append(Say.outcome(hold.closing().summary().outcome()))
                .append(": ")
                .append(object)
                .append(" with ")
                .append(grip)
                .append(", ")
                .append(CloseText.place(hold.closing().conditions()))
                .append('\n');
        text.append(hold.closing().reason()).append("\n\n");
        text.append(HoldFindings.of(object, hold).stream().map(Words::wrapped).collect(Collectors.joining("\n")));
        if (hold.tested()) {
            text.append("\n\n")
                    .append(pulls(hold))
                    .append("\n\n")
                    .append(turns(hold))
                    .append('\n');
            if (!hold.presses().isEmpty()) {
                text.append('\n').append(tasks(hold)).append('\n');
            }
            hold.stiffness()
                    .ifPresent(k -> text.append('\n').append(stiffness(k)).append('\n'));
            text.append('\n').append(judged(hold));
        }
        return text.toString();
    }

    private static Table pulls(HoldDetail hold) {
        String give = "at " + Say.length(HoldPlan.FIRST_GIVE);
        Table table =
                new Table("lrrrlrl", "pull", "peak", "there at", give, "it", "hand accelerated", "gave way first");
        for (PullResult p : hold.pulls()) {
            String shaken = hold.endurance().stream()
                    .filter(e -> e.axis().equals(p.axis()))
                    .map(HoldText::acceleration)
                    .findFirst()
                    .orElse("-");
            boolean known = p.kind() != Kind.UNDECIDED;
            double first = p.loadAt(HoldPlan.FIRST_GIVE);
            table.row(
                    HoldFindings.axis(p.axis()),
                    known ? Say.force(p.peak()) : "-",
                    known ? Say.length(p.peakAt()) : "-",
                    Double.isNaN(first) ? "-" : Say.force(first),
                    p.kind().words(),
                    shaken,
                    first(p, known ? Say.force(p.firstLoad()) : ""));
        }
        return table;
    }

    private static String acceleration(Endurance e) {
        return (Double.isInfinite(e.failed()) ? "over " : "")
                + Say.acceleration(e.survived())
                + (e.undecided() ? " ?" : "");
    }

    private static String first(PullResult p, String load) {
        return p.first().isEmpty() ? "-" : String.join(", ", p.first()) + " (" + load + ")";
    }

    private static Table turns(HoldDetail hold) {
        Table table = new Table("lrrll", "turn", "peak", "there at", "it", "gave way first");
        for (PullResult p : hold.turns()) {
            boolean known = p.kind() != Kind.UNDECIDED;
            table.row(
                    HoldFindings.axis(p.axis()),
                    known ? Say.torque(p.peak()) : "-",
                    known ? Say.angle(p.peakAt()) : "-",
                    p.kind().words(),
                    first(p, known ? Say.torque(p.firstLoad()) : ""));
        }
        return table;
    }

    private static Table tasks(HoldDetail hold) {
        Table table = new Table("llrrrrl", "task", "by", "wanted", "finger", "after travel", "hold", "");
        for (PressResult p : hold.presses()) {
            table.row(
                    p.task().name(),
                    p.task().finger(),
                    Say.force(p.task().force()),
                    Double.isNaN(p.fingerForce()) ? "-" : Say.force(p.fingerForce()),
                    Double.isNaN(p.lastForce()) ? "-" : Say.force(p.lastForce()),
                    p.push().kind() == Kind.UNDECIDED ? "-" : Say.force(p.holdForce()),
                    p.verdict().words());
        }
        return table;
    }

    /** Rows: force and torque; columns: shift [N/mm, N] and turn [N/rad, N m/rad]. */
    private static String stiffness(GraspStiffness k) {
        Table table = new Table(
                "lrrrrrr",
                "stiffness",
                "x 1 mm",
                "y 1 mm",
                "z 1 mm",
                "about x 1 deg",
                "about y 1 deg",
                "about z 1 deg");
        String[] rows = {"force x", "force y", "force z", "torque x", "torque y", "torque z"};
        for (int i = 0; i < 6; i++) {
            String[] cells = new String[7];
            cells[0] = rows[i];
            for (int j = 0; j < 6; j++) {
                double v = k.matrix().get(6 * i + j) * (j < 3 ? 1e-3 : Math.toRadians(1));
                double hair = 1e-6 * (i < 3 ? 1 : 0.03);
                cells[j + 1] = Math.abs(v) < hair ? "0" : i < 3 ? Say.force(v) : Say.torque(v);
            }
            table.row(cells);
        }
        return table.toString();
    }

    private static String judged(HoldDetail hold) {
        return Words.wrapped("judged   pulled " + Say.length(hold.plan().travel()) + " and turned "
                + Say.angle(hold.plan().turn()) + " in the hand; a load is borne if the object moves less than "
                + Say.length(hold.closing().criteria().sink()) + " and turns less than "
                + Say.angle(hold.closing().criteria().tilt())
                + " in it and comes to rest; a hand accelerated one way presses the object the other way");
    }
}
