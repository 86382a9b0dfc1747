package gripwright.files;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.shape.Box;
import gripwright.shape.Capsule;
import gripwright.shape.Composite;
import gripwright.shape.Cup;
import gripwright.shape.Cylinder;
import gripwright.shape.Ellipsoid;
import gripwright.shape.Ring;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import gripwright.shape.Tube;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The tables of shapes. A new simple shape is one section here and one line in {@link #SIMPLE}. */
final class ShapeKeys {
    private static final int MOST_PARTS = 50;

    /** Used where no edge radius is given: edges of goods are never perfectly sharp (common practice, no source). */
    private static final double USUAL_EDGE = 0.0005;

    private ShapeKeys() {}

    private static final Key<Double> DIAMETER = length("diameter", "Diameter.");
    private static final Key<Double> HEIGHT = length("height", "Height along its own z axis.");
    private static final Key<Double> EDGE = Key.derived(
            "edge",
            new Quantities.Value(Range.from0(Measure.LENGTH)),
            "0.5 mm, or a quarter of the smallest size if that is less",
            "Radius of the rounded edges.");

    private static Key<Double> length(String name, String says) {
        return Key.required(name, new Quantities.Value(Range.above0(Measure.LENGTH)), says);
    }

    private static double edge(Bound b, double smallestSize) {
        Optional<Double> given = b.find(EDGE);
        if (given.isEmpty()) {
            double edge = Math.min(USUAL_EDGE, smallestSize / 4);
            b.assume(
                    EDGE,
                    "not given; taken as " + QuantityText.format(edge, Measure.LENGTH)
                            + " (edges are never perfectly sharp; common practice, no source)");
            return edge;
        }
        if (given.get() > smallestSize / 2) {
            b.fault(
                    EDGE,
                    "edge is " + QuantityText.format(given.get(), Measure.LENGTH)
                            + ", more than half of the smallest size",
                    "an edge radius of at most " + QuantityText.format(smallestSize / 2, Measure.LENGTH));
            return smallestSize / 4; // the shape is not used; a second fault from its record would only confuse
        }
        return given.get();
    }

    // ---- simple shapes

    private static final Key<Sphere> SPHERE =
            shape(Section.of("sphere", "A sphere.", List.of(DIAMETER), b -> new Sphere(b.get(DIAMETER) / 2)));

    private static final Key<Cylinder> CYLINDER = shape(Section.of(
            "cylinder",
            "A cylinder about its own z axis.",
            List.of(DIAMETER, HEIGHT, EDGE),
            b -> new Cylinder(
                    b.get(DIAMETER) / 2, b.get(HEIGHT) / 2, edge(b, Math.min(b.get(DIAMETER), b.get(HEIGHT))))));

    private static final Key<List<Double>> SIZE = Key.required(
            "size",
            new Quantities.Several(3, Range.above0(Measure.LENGTH), "full size along its own x, y, z"),
            "Full size along its own x, y and z axes.");

    private static final Key<Box> BOX = shape(Section.of("box", "A box with rounded edges.", List.of(SIZE, EDGE), b -> {
        Vec3 size = Quantities.vec(b.get(SIZE));
        double smallest = Math.min(size.x(), Math.min(size.y(), size.z()));
        return new Box(size.x() / 2, size.y() / 2, size.z() / 2, edge(b, smallest));
    }));

    private static final Key<Double> LENGTH =
            length("length", "Full length along its own z axis, round ends included.");
    private static final Key<Capsule> CAPSULE = shape(Section.of(
                    "capsule",
                    "A rod with round ends along its own z axis.",
                    List.of(DIAMETER, LENGTH),
                    b -> new Capsule(b.get(DIAMETER) / 2, (b.get(LENGTH) - b.get(DIAMETER)) / 2))
            .checked(b -> b.find(LENGTH)
                    .filter(length -> length < b.find(DIAMETER).orElse(0.0))
                    .ifPresent(length -> b.fault(
                            LENGTH,
                            "length is " + QuantityText.format(length, Measure.LENGTH) + ", less than the diameter",
                            "at least the diameter; the round ends are part of the length"))));

    private static final Key<Ellipsoid> ELLIPSOID = shape(Section.of("ellipsoid", "An ellipsoid.", List.of(SIZE), b -> {
        Vec3 size = Quantities.vec(b.get(SIZE));
        return new Ellipsoid(size.x() / 2, size.y() / 2, size.z() / 2);
    }));

    private static final Key<Double> BOTTOM = length("bottom diameter", "Diameter at its lower end.");
    private static final Key<Double> TOP = length("top diameter", "Diameter at its upper end.");
    private static final Key<Cup> CUP = shape(Section.of(
            "cup",
            "A solid tapered cup (a cone without its point) along its own z axis.",
            List.of(BOTTOM, TOP, HEIGHT, EDGE),
            b -> new Cup(
                    b.get(BOTTOM) / 2,
                    b.get(TOP) / 2,
                    b.get(HEIGHT) / 2,
                    edge(b, Math.min(b.get(HEIGHT), Math.min(b.get(BOTTOM), b.get(TOP)))))));

    private static final Key<Double> OUTER = length("outer diameter", "Diameter over everything.");
    private static final Key<Double> THICKNESS = length("thickness", "Diameter of the bent rod.");
    private static final Key<Ring> RING = shape(Section.of(
                    "ring",
                    "A ring of round section (a torus) about its own z axis.",
                    List.of(OUTER, THICKNESS),
                    b -> new Ring((b.get(OUTER) - b.get(THICKNESS)) / 2, b.get(THICKNESS) / 2))
            .checked(b -> b.find(THICKNESS)
                    .filter(thickness -> 2 * thickness >= b.find(OUTER).orElse(Double.POSITIVE_INFINITY))
                    .ifPresent(thickness -> b.fault(
                            THICKNESS,
                            "thickness is " + QuantityText.format(thickness, Measure.LENGTH)
                                    + ": no hole is left in the ring",
                            "less than half of the outer diameter"))));

    private static final Key<Double> INNER = length("inner diameter", "Diameter of the bore.");
    private static final Key<Tube> TUBE = shape(Section.of(
                    "tube",
                    "A thick tube about its own z axis: a roll of tape, a bearing, a piece of pipe.",
                    List.of(OUTER, INNER, HEIGHT, EDGE),
                    b -> new Tube(
                            b.get(OUTER) / 2,
                            b.get(INNER) / 2,
                            b.get(HEIGHT) / 2,
                            edge(b, Math.min(b.get(HEIGHT), (b.get(OUTER) - b.get(INNER)) / 2))))
            .checked(b -> b.find(INNER)
                    .filter(inner -> inner >= b.find(OUTER).orElse(Double.POSITIVE_INFINITY))
                    .ifPresent(inner -> b.fault(
                            INNER,
                            "inner diameter is " + QuantityText.format(inner, Measure.LENGTH) + ": no wall is left",
                            "less than the outer diameter"))));

    static final List<Key<? extends Shape>> SIMPLE =
            List.of(SPHERE, CYLINDER, BOX, CAPSULE, ELLIPSOID, CUP, RING, TUBE);

    private static <T extends Shape> Key<T> shape(Section<T> section) {
        return Key.maybe(section.id(), section, section.says());
    }

    // ---- composite

    private static final Key<List<Double>> AT = Key.byDefault(
            "at",
            new Quantities.Several(3, Range.any(Measure.LENGTH), "x, y, z of its middle"),
            "[0 mm, 0 mm, 0 mm]",
            "in the middle of the whole",
            "Where the part's own middle sits in the whole.");
    private static final Key<List<Double>> TURNED = Key.byDefault(
            "turned",
            new Quantities.Several(
                    3, Range.within(Measure.ANGLE, -2 * Math.PI, 2 * Math.PI), "about x, then y, then z of the whole"),
            "[0 deg, 0 deg, 0 deg]",
            "its axes are those of the whole",
            "Turns of the part about the x, then the y, then the z axis of the whole.");

    private static final Section<Composite.Part> PART = Section.of(
                    "part",
                    "One shape placed in a whole.",
                    joined(SIMPLE, List.of(AT, TURNED)),
                    b -> new Composite.Part(simple(b), new Pose(Quantities.vec(b.get(AT)), turn(b.get(TURNED)))))
            .oneOf(SIMPLE);

    static final Key<List<Composite.Part>> PARTS = Key.maybe(
            "parts",
            new Kinds.Many<>(PART, 1, MOST_PARTS, "parts"),
            "Several shapes placed to one another, such as a mug and its handle.");

    private static Rotation turn(List<Double> angles) {
        return Rotation.about(Vec3.Z, angles.get(2))
                .times(Rotation.about(Vec3.Y, angles.get(1)))
                .times(Rotation.about(Vec3.X, angles.get(0)));
    }

    private static Shape simple(Bound b) {
        return find(b).orElseThrow();
    }

    /** The simple shape that is given, if one is. */
    static Optional<Shape> find(Bound b) {
        return SIMPLE.stream()
                .map(b::find)
                .flatMap(Optional::stream)
                .map(Shape.class::cast)
                .findFirst();
    }

    static List<Key<?>> joined(List<? extends Key<?>> first, List<? extends Key<?>> second) {
        List<Key<?>> all = new ArrayList<>(first);
        all.addAll(second);
        return all;
    }
}
