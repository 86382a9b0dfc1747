package gripwright.files;

import gripwright.model.Grip;
import gripwright.model.Press;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.util.List;
import java.util.Map;

/** The table of one task of an object: a press by a finger that a grip leaves free. */
final class TaskKeys {
    private static final int MOST_TASKS = 20;
    private static final double SHORTEST = 1e-9;

    private TaskKeys() {}

    private static final Key<String> GRIP =
            Key.required("grip", new Kinds.Name(GripKeys.FAMILY), "The grip that holds the object meanwhile.");
    private static final Key<String> FINGER = Key.required(
            "finger",
            new Kinds.Name(FingerKeys.FAMILY),
            "The finger that presses, with its last phalanx; one that the grip leaves free.");
    private static final Key<Double> TENSION = Key.required(
            "greatest tension",
            new Quantities.Value(Range.above0(Measure.FORCE)),
            "What the finger is pulled with: the greatest tension of a line of its own, before its sheath. The drive does"
                    + " not pull a finger that a grip leaves free.");
    private static final Key<List<Double>> AT = Key.required(
            "at",
            new Quantities.Several(3, Range.any(Measure.LENGTH), "x, y, z in the shape's own frame"),
            "The place that is pressed, in the shape's own frame; what is pressed need not be part of the shape.");
    private static final Key<List<Double>> TOWARD = Key.required(
            "toward",
            new Quantities.Several(3, Range.any(Measure.NUMBER), "x, y, z in the shape's own frame, not all 0"),
            "The direction of the press, in the shape's own frame; its length does not count.");
    private static final Key<Double> FORCE = Key.required(
            "force", new Quantities.Value(Range.above0(Measure.FORCE)), "Force wanted along that direction.");
    private static final Key<Double> TRAVEL = Key.byDefault(
            "travel",
            new Quantities.Value(Range.from0(Measure.LENGTH)),
            "0 mm",
            "what is pressed does not give way",
            "How far what is pressed gives way along that direction.");

    private static final Section<Press> TASK = Section.of(
                    "task",
                    "A press by a finger that the grip leaves free while it holds the object.",
                    List.of(GRIP, FINGER, TENSION, AT, TOWARD, FORCE, TRAVEL),
                    b -> new Press(
                            b.name(),
                            b.get(GRIP),
                            b.get(FINGER),
                            b.get(TENSION),
                            Quantities.vec(b.get(AT)),
                            Quantities.vec(b.get(TOWARD)),
                            b.get(FORCE),
                            b.get(TRAVEL)))
            .checked(TaskKeys::check);

    static final Kind<Map<String, Press>> TASKS = new Kinds.Named<>(TASK, 1, MOST_TASKS, "tasks", null, null);

    private static void check(Bound b) {
        b.find(TOWARD)
                .filter(d -> Quantities.vec(d).length() < SHORTEST)
                .ifPresent(d ->
                        b.fault(TOWARD, "toward has no direction", "three numbers, not all 0, such as [0, 0, -1]"));
        b.find(FINGER)
                .filter(finger -> b.find(GRIP)
                        .map(grip -> b.reading().named(GripKeys.FAMILY, grip))
                        .filter(grip -> grip instanceof Grip g && g.fingers().contains(finger))
                        .isPresent())
                .ifPresent(finger -> b.fault(
                        FINGER,
                        "finger '" + finger + "' takes part in grip '"
                                + b.find(GRIP).orElse("") + "'",
                        "a finger that this grip leaves free (hand.yaml: grips: fingers: names those taking part)"));
    }

    /** A place so far off that no object of that size can have it is refused. */
    static void checkReach(Bound b, Press task, double radius) {
        if (task.point().length() > 2 * radius) {
            b.reading()
                    .fault(
                            b.reading().placeOf(b.path() + ".task." + task.name() + ".at", b.place()),
                            "the place of task '" + task.name() + "' lies "
                                    + QuantityText.format(task.point().length(), Measure.LENGTH)
                                    + " from the shape's origin",
                            "a place on the object or near it, at most "
                                    + QuantityText.format(2 * radius, Measure.LENGTH) + " away");
        }
    }
}
