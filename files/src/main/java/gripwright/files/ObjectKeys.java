package gripwright.files;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.GraspObject;
import gripwright.model.Press;
import gripwright.model.Spread;
import gripwright.shape.Composite;
import gripwright.shape.Mesh;
import gripwright.shape.Shape;
import gripwright.units.Dimension;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import gripwright.units.UnitFault;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The table of one object of need.yaml. */
final class ObjectKeys {
    private static final double MILLIMETRE = 1e-3;

    private ObjectKeys() {}

    /** The kind of a value that cannot be written in a file. */
    private record Unwritten<T>() implements Kind<T> {
        @Override
        public @Nullable T read(Tree tree, String path, Reading reading) {
            return refuse(tree, path, reading);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return Map.of();
        }

        @Override
        public String words() {
            return "nothing";
        }
    }

    // ---- how it stands

    /** How an object stands on the table. */
    enum Stance {
        UPRIGHT("upright", shape -> Rotation.IDENTITY),
        UPSIDE_DOWN("upside down", shape -> Rotation.about(Vec3.X, Math.PI)),
        LYING("lying", shape -> Rotation.about(Vec3.X, -Math.PI / 2)),
        FLAT("flat", Stance::smallestUp);

        private final String word;
        private final Function<Shape, Rotation> turn;

        Stance(String word, Function<Shape, Rotation> turn) {
            this.word = word;
            this.turn = turn;
        }

        static Map<String, Stance> words() {
            Map<String, Stance> words = new LinkedHashMap<>();
            for (Stance stance : values()) {
                words.put(stance.word, stance);
            }
            return words;
        }

        /** The smallest of the three extents upright, the largest along y; ties keep the z axis upright. */
        private static Rotation smallestUp(Shape shape) {
            Vec3[] axes = {Vec3.Z, Vec3.Y, Vec3.X};
            Vec3 up = Vec3.Z;
            Vec3 along = Vec3.Y;
            for (Vec3 axis : axes) {
                if (size(shape, axis) < size(shape, up) * (1 - 1e-9)) {
                    up = axis;
                }
            }
            along = up.equals(Vec3.Y) ? Vec3.Z : Vec3.Y;
            for (Vec3 axis : axes) {
                if (!axis.equals(up) && size(shape, axis) > size(shape, along) * (1 + 1e-9)) {
                    along = axis;
                }
            }
            // Rows of the turn: which axis of the shape becomes the table's x, y, z.
            return Rotation.ofColumns(along.cross(up), along, up).inverse();
        }

        private static double size(Shape shape, Vec3 axis) {
            return shape.extent(axis) + shape.extent(axis.times(-1));
        }
    }

    /** The turn from the shape's frame to the table: about its own axis, then laid down, then about the vertical. */
    static Rotation stance(Stance stance, Shape shape, double rolled, double turned) {
        return Rotation.about(Vec3.Z, turned).times(stance.turn.apply(shape)).times(Rotation.about(Vec3.Z, rolled));
    }

    // ---- what it bears

    /** A force or a pressure. */
    private record Squeeze(OptionalDouble force, OptionalDouble pressure) {}

    private record ForceOrPressure() implements Kind<Squeeze> {
        private static final Range FORCE = Range.above0(Measure.FORCE);
        private static final Range PRESSURE = Range.above0(Measure.PRESSURE);

        @Override
        public @Nullable Squeeze read(Tree tree, String path, Reading reading) {
            boolean pressure =
                    tree instanceof Tree.Text text && dimension(text.value()).equals(Measure.PRESSURE.dimension());
            Double value = new Quantities.Value(pressure ? PRESSURE : FORCE).read(tree, path, reading);
            if (value == null) {
                return null;
            }
            OptionalDouble some = OptionalDouble.of(value);
            return pressure ? new Squeeze(OptionalDouble.empty(), some) : new Squeeze(some, OptionalDouble.empty());
        }

        private static Dimension dimension(String text) {
            try {
                return QuantityText.quantity(text).dimension();
            } catch (UnitFault fault) {
                return Dimension.NONE; // read again as a force, which says what is wrong
            }
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return Quantities.pattern(FORCE, "");
        }

        @Override
        public String words() {
            return "a force on one phalanx or the palm, such as 15 N, or a pad pressure, such as 40 kPa";
        }
    }

    // ---- the object

    private static final Key<Path> MESH =
            Key.maybe("mesh", new Sourced.FileInFolder(), "A closed surface from an STL file in the project folder.");
    /** Not a key of the file: where the mesh that was read is kept for the builder. */
    private static final Key<Mesh> MESH_READ = Key.maybe("(mesh)", new Unwritten<>(), "");

    private static final Key<Double> MESH_UNIT = Key.derived(
            "mesh unit",
            new Kinds.Choice<>(meshUnits()),
            "mm, the usual unit of STL files",
            "Unit of the numbers in the STL file, which does not say it itself.");
    private static final Key<CatalogueEntry> FROM = Key.maybe(
            "from", new Sourced.FromCatalogue(), "Name of an object in the catalogue, which gives shape and mass.");
    private static final Key<Spread> MASS = Key.derived(
            "mass",
            new Quantities.WithSpread(Range.above0(Measure.MASS)),
            "that of the catalogue; without `from` it is required",
            "Mass, perhaps with one standard deviation.");
    private static final Key<List<Double>> CENTRE_OF_MASS = Key.derived(
            "centre of mass",
            new Quantities.Several(3, Range.any(Measure.LENGTH), "x, y, z in the shape's own frame"),
            "the middle of the volume",
            "Centre of mass in the shape\'s own frame.");
    private static final Key<String> SURFACE = Key.required(
            "surface",
            new Kinds.Name(HandKeys.SURFACE_FAMILY),
            "What it is covered with: one of the surfaces of the hand's friction table.");
    private static final Key<Squeeze> SQUEEZE = Key.optional(
            "squeeze at most",
            new ForceOrPressure(),
            "it bears any squeeze",
            "What it bears: the greatest force on any one phalanx or the palm, or the greatest pad pressure.");
    private static final Key<Stance> STANDS = Key.byDefault(
            "stands",
            new Kinds.Choice<>(Stance.words()),
            "upright",
            "its own z axis upright",
            "How it is placed: upright (own z axis up), upside down, lying (own z axis along table y), or flat (smallest"
                    + " size upright, largest along table y).");
    private static final Key<Double> TURNED = Key.byDefault(
            "turned",
            angle(),
            "0 deg",
            "its axes along the table's",
            "Turn about the vertical at its nominal place, after it has been laid down.");
    private static final Key<Double> ROLLED = Key.derived(
            "rolled",
            angle(),
            "0 deg",
            "Turn about its own z axis before it is laid down: where a lying mug's handle points.");
    private static final Key<List<String>> GRIPS = Key.optional(
            "grips",
            new Kinds.Many<>(new Kinds.Name(GripKeys.FAMILY), 1, 30, "grip names"),
            "all grips are tried",
            "The grips to be tried on it.");
    private static final Key<Double> WEIGHT = Key.byDefault(
            "weight",
            new Quantities.Value(Range.from0(Measure.NUMBER).upTo(1e6)),
            "1",
            "all objects count alike",
            "How much it counts in the total.");

    private static final Key<Map<String, Press>> TASK = Key.maybe(
            "task",
            TaskKeys.TASKS,
            "Jobs for a finger that a grip leaves free while it holds the object, by name: a button, a lever.");

    private static final List<Key<?>> SHAPES = ShapeKeys.joined(ShapeKeys.SIMPLE, List.of(ShapeKeys.PARTS, MESH, FROM));

    static final Section<GraspObject> OBJECT = Section.of(
                    "object",
                    "One object to be picked up.",
                    ShapeKeys.joined(
                            SHAPES,
                            List.of(
                                    MESH_UNIT,
                                    MASS,
                                    CENTRE_OF_MASS,
                                    SURFACE,
                                    SQUEEZE,
                                    STANDS,
                                    TURNED,
                                    ROLLED,
                                    GRIPS,
                                    WEIGHT,
                                    TASK)),
                    ObjectKeys::object)
            .oneOf(SHAPES)
            .checked(ObjectKeys::readMesh)
            .checked(ObjectKeys::checkMass)
            .checked(ObjectKeys::checkFriction);

    private static Quantities.Value angle() {
        return new Quantities.Value(Range.within(Measure.ANGLE, -2 * Math.PI, 2 * Math.PI));
    }

    private static Map<String, Double> meshUnits() {
        Map<String, Double> units = new LinkedHashMap<>();
        for (String unit : List.of("mm", "cm", "m", "in")) {
            units.put(unit, QuantityText.unit(unit).factor());
        }
        return units;
    }

    /** Here and not in the builder, so that a faulty mesh is reported along with the object's other faults. */
    private static void readMesh(Bound b) {
        if (!b.isGiven(MESH)) {
            if (b.isGiven(MESH_UNIT)) {
                b.reading().fault(b.keyPlace(MESH_UNIT), "'mesh unit' without a mesh", "the key mesh, or no mesh unit");
            }
            return;
        }
        Optional<Path> file = b.find(MESH);
        if (file.isEmpty() || (b.isGiven(MESH_UNIT) && b.find(MESH_UNIT).isEmpty())) {
            return; // said already
        }
        if (!b.isGiven(MESH_UNIT)) {
            b.assume(MESH_UNIT, "not given; the numbers of the STL file are taken as mm (the usual unit of STL files)");
        }
        double unit = b.find(MESH_UNIT).orElse(MILLIMETRE);
        b.put(MESH_READ, Sourced.mesh(file.get(), unit, b.place(MESH), b.reading()));
    }

    private static void checkMass(Bound b) {
        if (!b.isGiven(MASS) && !b.isGiven(FROM)) {
            b.reading()
                    .fault(
                            b.place(),
                            "key 'mass' is missing in " + b.name(),
                            "mass: " + MASS.kind().words());
        }
    }

    /** Every rubber that a pad is made of needs a coefficient on the object's surface. */
    private static void checkFriction(Bound b) {
        Optional<String> surface = b.find(SURFACE);
        if (surface.isEmpty()) {
            return;
        }
        for (String rubber : b.reading().names(PalmKeys.USED_RUBBER)) {
            Set<String> table = b.reading().names(HandKeys.frictionOf(rubber));
            if (!table.contains(surface.get())) {
                b.fault(
                        SURFACE,
                        "rubber '" + rubber + "' of the pads has no friction on surface '" + surface.get() + "' of '"
                                + b.name() + "'",
                        "hand.yaml: friction: {" + rubber + ": {" + surface.get() + ": 0.6 +- 0.1}}"
                                + (table.isEmpty() ? "" : ", or a surface it has: " + Words.list(table)));
            }
        }
    }

    private static @Nullable GraspObject object(Bound b) {
        Shaped shaped = shape(b);
        if (shaped == null) {
            return null;
        }
        Spread mass = b.find(MASS).orElse(shaped.mass());
        if (mass == null) {
            return null;
        }
        Vec3 centre = b.find(CENTRE_OF_MASS).map(Quantities::vec).orElseGet(() -> {
            Vec3 middle = shaped.shape().centroid();
            b.assume(CENTRE_OF_MASS, "not given; taken as the middle of the volume, " + shown(middle));
            return middle;
        });
        if (centre.length() > shaped.shape().boundingRadius()) {
            b.fault(
                    CENTRE_OF_MASS,
                    "the centre of mass lies outside the object",
                    "a point at most " + QuantityText.format(shaped.shape().boundingRadius(), Measure.LENGTH)
                            + " from the middle of the shape's own frame");
        }
        if (b.get(STANDS) != Stance.UPRIGHT && !b.isGiven(ROLLED)) {
            // Upright it would only add to `turned`.
            b.assume(ROLLED, "not given; taken as 0 deg (not turned before it is laid down)");
        }
        Squeeze squeeze = b.find(SQUEEZE).orElse(new Squeeze(OptionalDouble.empty(), OptionalDouble.empty()));
        List<String> allGrips = List.copyOf(b.reading().names(GripKeys.FAMILY));
        Map<String, Press> tasks = b.find(TASK).orElse(Map.of());
        tasks.values()
                .forEach(task -> TaskKeys.checkReach(b, task, shaped.shape().boundingRadius()));
        return new GraspObject(
                b.name(),
                shaped.shape(),
                mass.mean(),
                mass,
                centre,
                b.get(SURFACE),
                stance(b.get(STANDS), shaped.shape(), b.find(ROLLED).orElse(0.0), b.get(TURNED)),
                squeeze.force(),
                squeeze.pressure(),
                b.find(GRIPS).orElse(allGrips),
                b.get(WEIGHT),
                List.copyOf(tasks.values()));
    }

    private record Shaped(Shape shape, @Nullable Spread mass) {}

    private static @Nullable Shaped shape(Bound b) {
        Optional<List<Composite.Part>> parts = b.find(ShapeKeys.PARTS);
        if (parts.isPresent()) {
            return new Shaped(new Composite(parts.get()), null);
        }
        Optional<CatalogueEntry> entry = b.find(FROM);
        if (entry.isPresent()) {
            return fromCatalogue(entry.get(), b);
        }
        Optional<Mesh> mesh = b.find(MESH_READ);
        if (mesh.isPresent()) {
            return new Shaped(mesh.get(), null);
        }
        return ShapeKeys.find(b).map(shape -> new Shaped(shape, null)).orElse(null);
    }

    private static Shaped fromCatalogue(CatalogueEntry entry, Bound b) {
        String more = entry.assumption().isEmpty() ? "" : "; " + entry.assumption();
        b.assume(FROM, "shape of '" + entry.name() + "': " + entry.source() + " (" + entry.mark() + ")" + more);
        if (!b.isGiven(MASS)) {
            b.assume(
                    MASS,
                    "not given; taken as " + QuantityText.format(entry.mass(), Measure.MASS) + " of '" + entry.name()
                            + "': " + entry.source() + " (" + entry.massMark().word() + ")");
        }
        return new Shaped(entry.shape(), Spread.exactly(entry.mass()));
    }

    private static String shown(Vec3 point) {
        List<String> numbers = new ArrayList<>();
        for (double x : new double[] {point.x(), point.y(), point.z()}) {
            numbers.add(QuantityText.format(Math.abs(x) < 1e-9 ? 0 : x, Measure.LENGTH));
        }
        return "[" + String.join(", ", numbers) + "] in its own frame";
    }
}
