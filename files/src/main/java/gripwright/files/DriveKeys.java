package gripwright.files;

import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.Motor;
import gripwright.model.Spool;
import gripwright.model.Transmission;
import gripwright.model.Transmission.Branch;
import gripwright.units.Measure;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The tables of motors and tendons, and the tree of differentials and spools. */
final class DriveKeys {
    static final String PULLED = "pulled finger";

    private static final double MOST_WRAP = 8 * Math.PI;

    private DriveKeys() {}

    private static final Range RATIO = Range.above0(Measure.NUMBER).upTo(100);

    /** Ways of sharing a pull; a new one is one line here and the record it makes. */
    private static final Map<String, Function<List<Branch>, Transmission>> SHARINGS = sharings();

    private static Map<String, Function<List<Branch>, Transmission>> sharings() {
        Map<String, Function<List<Branch>, Transmission>> sharings = new LinkedHashMap<>();
        sharings.put("floating", Floating::new);
        sharings.put("spool", Spool::new);
        return sharings;
    }

    /**
     * What a motor or a branch pulls: a finger's name, or {@code {floating: {left: 1, right: 1}}}, or the same with
     * {@code spool}; a branch that is not a finger has a ratio and a sharing of its own.
     */
    private record Pull() implements Kind<Transmission> {
        private static final String ID = "pull";
        private static final String RATIO_KEY = "ratio";
        private static final Kinds.Name FINGER = new Kinds.Name(FingerKeys.FAMILY);
        private static final Quantities.Value SHARE = new Quantities.Value(RATIO);

        @Override
        public @Nullable Transmission read(Tree tree, String path, Reading reading) {
            if (tree instanceof Tree.Text text) {
                return finger(text, path, reading);
            }
            return tree instanceof Tree.Entries entries
                    ? sharing(entries, false, path, reading)
                    : refuse(tree, path, reading);
        }

        private @Nullable Transmission finger(Tree.Text name, String path, Reading reading) {
            if (FINGER.read(name, path, reading) == null) {
                return null;
            }
            if (reading.names(PULLED).contains(name.value())) {
                reading.fault(
                        name.place(),
                        "finger '" + name.value() + "' is pulled a second time",
                        "each finger in one place of one motor's tree");
                return null;
            }
            reading.define(PULLED, name.value(), null);
            return new FingerTendon(name.value());
        }

        private @Nullable Transmission sharing(Tree.Entries entries, boolean branch, String path, Reading reading) {
            List<Tree.Entry> ways = entries.entries().stream()
                    .filter(e -> !(branch && e.key().value().equals(RATIO_KEY)))
                    .toList();
            if (ways.size() != 1 || !SHARINGS.containsKey(ways.get(0).key().value())) {
                reading.fault(
                        ways.isEmpty()
                                ? entries.place()
                                : ways.get(ways.size() - 1).key().place(),
                        Kind.lastOf(path) + " has the keys "
                                + Words.list(entries.entries().stream()
                                        .map(e -> e.key().value())
                                        .toList()),
                        branch ? "ratio and one of floating, spool" : "one of floating, spool");
                return null;
            }
            String way = ways.get(0).key().value();
            Tree body = ways.get(0).value();
            if (!(body instanceof Tree.Entries branches) || branches.entries().isEmpty()) {
                reading.fault(
                        body.place(), way + " is " + body.words(), "fingers with their ratios, such as {left: 1}");
                return null;
            }
            List<Branch> read = new ArrayList<>();
            for (Tree.Entry entry : branches.entries()) {
                Branch one = branch(entry, path + "." + way + "." + entry.key().value(), reading);
                if (one != null) {
                    read.add(one);
                }
            }
            return read.size() == branches.entries().size()
                    ? SHARINGS.getOrDefault(way, Floating::new).apply(read)
                    : null;
        }

        private @Nullable Branch branch(Tree.Entry entry, String path, Reading reading) {
            reading.place(path, entry.value().place());
            Double ratio;
            Transmission to;
            if (entry.value() instanceof Tree.Entries nested) {
                if (reading.names(FingerKeys.FAMILY).contains(entry.key().value())) {
                    reading.fault(
                            entry.key().place(),
                            "branch '" + entry.key().value() + "' has branches of its own but the name of a finger",
                            "another name for the branch");
                }
                Tree.Entry given = nested.find(RATIO_KEY).orElse(null);
                if (given == null) {
                    reading.fault(
                            entry.key().place(),
                            "key 'ratio' is missing in branch '" + entry.key().value() + "'",
                            "ratio: " + SHARE.words());
                }
                ratio = given == null ? null : SHARE.read(given.value(), path + "." + RATIO_KEY, reading);
                to = sharing(nested, true, path, reading);
            } else {
                ratio = SHARE.read(entry.value(), path, reading);
                to = finger(entry.key(), path, reading);
            }
            return ratio == null || to == null ? null : new Branch(ratio, to);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            if (!definitions.containsKey(ID)) {
                Map<String, Object> ratio = SHARE.schema(definitions);
                Map<String, Object> self = Json.object("$ref", "#/$defs/" + ID);
                Map<String, Object> nested = Json.object("allOf", List.of(self));
                nested.put("required", List.of(RATIO_KEY));
                nested.put("type", "object");
                Map<String, Object> branches = Json.object("type", "object");
                branches.put("minProperties", 1);
                branches.put("additionalProperties", Json.object("anyOf", List.of(ratio, nested)));
                Map<String, Object> properties = Json.object(RATIO_KEY, ratio);
                SHARINGS.keySet().forEach(way -> properties.put(way, branches));
                Map<String, Object> tree = Json.object("type", "object");
                tree.put("additionalProperties", false);
                tree.put("properties", properties);
                tree.put(
                        "oneOf",
                        SHARINGS.keySet().stream()
                                .map(way -> Json.object("required", List.of(way)))
                                .toList());
                definitions.put(ID, Json.object("anyOf", List.of(FINGER.schema(definitions), tree)));
            }
            return Json.object("$ref", "#/$defs/" + ID);
        }

        @Override
        public String words() {
            return "a finger's name, or {floating: {left: 1, right: 1}} (equal tension times ratio), or {spool: {...}}"
                    + " (equal travel times ratio); a branch may be {ratio: 2, floating: {...}}";
        }
    }

    // ---- tendon

    private record Tendon(double stiffness, double friction, Map<String, Double> wrap) {}

    private static final Key<Double> STIFFNESS = Key.required(
            "stiffness",
            new Quantities.Value(Range.above0(Measure.STIFFNESS)),
            "Stiffness of the tendon between the winch and a finger.");
    private static final Key<Double> SHEATH_FRICTION = Key.required(
            "sheath friction",
            new Quantities.Value(Range.from0(Measure.NUMBER).upTo(2)),
            "Friction coefficient of the tendon against its sheath and guides, for the capstan relation.");
    private static final Key<Map<String, Double>> WRAP = Key.derived(
            "wrap",
            Kinds.Named.per(
                    FingerKeys.FAMILY,
                    new Quantities.Value(Range.within(Measure.ANGLE, 0, MOST_WRAP)),
                    "fingers with angles"),
            "0 deg for each finger not named: a straight sheath",
            "Total bend of the sheath between the winch and the first joint, by finger.");
    private static final Section<Tendon> TENDON = Section.of(
            "tendon",
            "The tendon of a motor.",
            List.of(STIFFNESS, SHEATH_FRICTION, WRAP),
            b -> new Tendon(
                    b.get(STIFFNESS), b.get(SHEATH_FRICTION), b.find(WRAP).orElse(Map.of())));

    // ---- motor

    private static final Key<Transmission> PULLS =
            Key.required("pulls", new Pull(), "What the winch pulls: a finger, or a tree of differentials and spools.");
    private static final Key<Double> GREATEST_TENSION = Key.required(
            "greatest tension",
            new Quantities.Value(Range.above0(Measure.FORCE)),
            "Tension at the winch at which the motor stalls.");
    private static final Key<Tendon> MOTOR_TENDON =
            Key.required("tendon", TENDON, "Stiffness and friction of its tendon.");
    private static final Key<Motor.WhenOff> WHEN_OFF = Key.byDefault(
            "when off",
            Kinds.Choice.of("locked", Motor.WhenOff.LOCKED, "powered", Motor.WhenOff.POWERED),
            "locked",
            "a self-locking gear or a brake keeps the winch where it is",
            "What the winch does once closed: locked keeps its length, powered keeps its tension.");

    static final Section<Motor> MOTOR = Section.of(
            "motor",
            "One motor with a winch.",
            List.of(PULLS, GREATEST_TENSION, MOTOR_TENDON, WHEN_OFF),
            DriveKeys::motor);

    private static Motor motor(Bound b) {
        Tendon tendon = b.get(MOTOR_TENDON);
        Transmission pulls = b.get(PULLS);
        for (String finger : tendon.wrap().keySet()) {
            if (!pulls.fingers().contains(finger)) {
                b.reading()
                        .fault(
                                b.place(MOTOR_TENDON),
                                "wrap of finger '" + finger + "', which motor '" + b.name() + "' does not pull",
                                "only fingers that the motor pulls: " + Words.list(pulls.fingers()));
            }
        }
        for (String finger : pulls.fingers()) {
            if (!tendon.wrap().containsKey(finger)) {
                b.reading()
                        .assume(
                                b.path(MOTOR_TENDON) + ".wrap." + finger,
                                "not given; taken as 0 deg (a straight sheath)");
            }
        }
        return new Motor(
                b.name(),
                pulls,
                b.get(GREATEST_TENSION),
                tendon.stiffness(),
                tendon.friction(),
                tendon.wrap(),
                b.get(WHEN_OFF));
    }
}
