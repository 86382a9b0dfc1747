package gripwright.files;

import gripwright.model.GraspObject;
import gripwright.model.Need;
import gripwright.model.Placement;
import gripwright.model.Scatter;
import gripwright.model.Spread;
import gripwright.units.Measure;
import java.util.List;
import java.util.Map;

/** The table of need.yaml. */
final class NeedKeys {
    private static final int MOST_OBJECTS = 500;

    private NeedKeys() {}

    private static final Key<String> NAME =
            Key.required("name", new Kinds.Line(), "What the need is called in reports.");

    private static final Key<Spread> TABLE_FRICTION = Key.required(
            "friction",
            new Quantities.WithSpread(HandKeys.FRICTION_RANGE),
            "Friction coefficient of the objects on the surface.");
    private static final Section<Spread> SURFACE_SECTION = Section.of(
                    "table", "The surface the objects stand on.", List.of(TABLE_FRICTION), b -> b.get(TABLE_FRICTION))
            .checked(b ->
                    b.find(TABLE_FRICTION).ifPresent(mu -> HandKeys.noteZero(b.reading(), b.path(TABLE_FRICTION), mu)));
    private static final Key<Spread> SURFACE =
            Key.required("surface", SURFACE_SECTION, "The surface the objects stand on.");

    private static final Key<Scatter> X = Key.required(
            "x", new Quantities.ScatterAbout0(Measure.LENGTH), "Scatter along x, the closing direction of the grip.");
    private static final Key<Scatter> Y =
            Key.required("y", new Quantities.ScatterAbout0(Measure.LENGTH), "Scatter along y, across.");
    private static final Key<Scatter> TURN = Key.byDefault(
            "turn",
            new Quantities.ScatterAbout0(Measure.ANGLE),
            "0 deg sd",
            "no scatter",
            "Scatter of the object's turn about the vertical.");
    private static final Key<Scatter> HEIGHT = Key.byDefault(
            "height",
            new Quantities.ScatterAbout0(Measure.LENGTH),
            "0 mm sd",
            "no scatter",
            "Scatter of the hand's height over the one intended.");
    private static final Section<Placement> PLACEMENT_SECTION = Section.of(
            "placement",
            "How wrong the placement of the object may be, in table axes.",
            List.of(X, Y, TURN, HEIGHT),
            b -> new Placement(b.get(X), b.get(Y), b.get(TURN), b.get(HEIGHT)));
    private static final Key<Placement> PLACEMENT =
            Key.required("placement", PLACEMENT_SECTION, "How wrong the placement may be.");

    private record Handling(double lift, double acceleration) {}

    private static final Key<Double> LIFT = Key.required(
            "lift", new Quantities.Value(Range.above0(Measure.LENGTH)), "How high the objects are really lifted.");
    private static final Key<Double> ACCELERATION = Key.required(
            "acceleration",
            new Quantities.Value(Range.from0(Measure.ACCELERATION)),
            "Greatest acceleration while the object is carried.");
    private static final Section<Handling> HANDLING_SECTION = Section.of(
            "handling",
            "What happens to an object once it is held.",
            List.of(LIFT, ACCELERATION),
            b -> new Handling(b.get(LIFT), b.get(ACCELERATION)));
    private static final Key<Handling> HANDLING =
            Key.required("handling", HANDLING_SECTION, "What happens to an object once it is held.");

    private static final Key<Double> SUCCESS = Key.required(
            "success",
            new Quantities.Value(Range.above0(Measure.SHARE).upTo(1)),
            "Share of the pick-ups that must work.");
    private static final Section<Double> WANTED_SECTION =
            Section.of("wanted", "What counts as good enough.", List.of(SUCCESS), b -> b.get(SUCCESS));
    private static final Key<Double> WANTED = Key.required("wanted", WANTED_SECTION, "What counts as good enough.");

    private static final Key<Map<String, GraspObject>> OBJECTS = Key.required(
            "objects",
            new Kinds.Named<>(ObjectKeys.OBJECT, 1, MOST_OBJECTS, "objects", null, null),
            "The objects to be picked up, by name.");

    static final Section<Need> NEED = Section.of(
            "need",
            "need.yaml: what must be picked up, from what, how wrongly placed, and how surely.",
            List.of(NAME, SURFACE, PLACEMENT, HANDLING, WANTED, OBJECTS),
            b -> new Need(
                    b.get(NAME),
                    b.get(SURFACE),
                    b.get(PLACEMENT),
                    b.get(HANDLING).lift(),
                    b.get(HANDLING).acceleration(),
                    b.get(WANTED),
                    List.copyOf(b.get(OBJECTS).values())));
}
