package gripwright.files;

import gripwright.pad.Readings;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The section of pads.yaml that names the columns of a log. */
final class ReadingKeys {
    /** Names of the pads of this file, known once they have been read. */
    static final String PAD_FAMILY = "sensing pad";

    private static final int MOST_TAXELS = 512;
    private static final Kind<String> COLUMN = new Kinds.Line();

    private ReadingKeys() {}

    private static final Key<String> CLOCK_COLUMN = Key.required("column", COLUMN, "Column of the clock.");
    private static final Key<Double> CLOCK_UNIT =
            Key.byDefault("unit", new Kinds.Choice<>(ticks()), "s", "seconds", "Unit of that column: s, ms, us or ns.");
    private static final Section<Readings.Clock> CLOCK = Section.of(
            "clock column",
            "A clock in another unit than seconds.",
            List.of(CLOCK_COLUMN, CLOCK_UNIT),
            b -> new Readings.Clock(b.get(CLOCK_COLUMN), b.get(CLOCK_UNIT)));

    private static Map<String, Double> ticks() {
        Map<String, Double> ticks = new LinkedHashMap<>();
        ticks.put("s", 1.0);
        ticks.put("ms", 1e-3);
        ticks.put("us", 1e-6);
        ticks.put("ns", 1e-9);
        return ticks;
    }

    /** A column name, or a block with the column and its unit. */
    private record OfClock() implements Kind<Readings.Clock> {
        @Override
        public Readings.@Nullable Clock read(Tree tree, String path, Reading reading) {
            if (tree instanceof Tree.Entries) {
                return CLOCK.read(tree, path, reading);
            }
            String column = COLUMN.read(tree, path, reading);
            return column == null ? null : new Readings.Clock(column, 1);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return Json.object("anyOf", List.of(COLUMN.schema(definitions), CLOCK.schema(definitions)));
        }

        @Override
        public String words() {
            return "a column in seconds, or {column: t_us, unit: us}";
        }

        @Override
        public List<Section<?>> sections() {
            return List.of(CLOCK);
        }
    }

    /** One column for all pads, or a block with one per pad. */
    private record PerPad() implements Kind<Map<String, String>> {
        /** Stands for every pad. */
        static final String ALL = "";

        private static final Kind<Map<String, String>> EACH = Kinds.Named.per(PAD_FAMILY, COLUMN, "pads");

        @Override
        public @Nullable Map<String, String> read(Tree tree, String path, Reading reading) {
            if (tree instanceof Tree.Entries) {
                return EACH.read(tree, path, reading);
            }
            String column = COLUMN.read(tree, path, reading);
            return column == null ? null : Map.of(ALL, column);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return Json.object("anyOf", List.of(COLUMN.schema(definitions), EACH.schema(definitions)));
        }

        @Override
        public String words() {
            return "a column, or a block with one column per pad";
        }
    }

    private static final Key<Readings.Clock> TIME =
            Key.required("time", new OfClock(), "Column of the device's clock, in seconds unless said otherwise.");
    private static final Key<String> SEQUENCE =
            Key.maybe("sequence", COLUMN, "Column that counts the lines at the device; shows lines that were lost.");
    private static final Key<Map<String, List<String>>> TAXELS = Key.required(
            "taxels",
            Kinds.Named.per(PAD_FAMILY, new Kinds.Many<>(COLUMN, 1, MOST_TAXELS, "columns"), "pads"),
            "Per pad the columns of its taxels in order along the strip, row after row.");
    private static final Key<Readings.Scale> UNIT =
            Key.required("unit", new Kinds.Choice<>(scales()), "Unit of the taxels' columns: Pa, hPa, kPa, or counts.");
    private static final Key<Map<String, String>> TEMPERATURE = Key.maybe(
            "temperature",
            new PerPad(),
            "Column of the temperature in degC, one for all pads or one per pad in a block.");
    private static final Key<String> AMBIENT = Key.maybe(
            "ambient",
            COLUMN,
            "Column of a barometer that lies open beside the pads, in the unit of the taxels, or in Pa if they are"
                    + " counts.");
    private static final Key<String> FORCE =
            Key.maybe("force", COLUMN, "Column of a reference load cell in N, taken when a command is given no other.");
    private static final Key<Readings.Clock> FORCE_TIME = Key.maybe(
            "force time",
            new OfClock(),
            "Column of the load cell's own clock, in seconds unless said otherwise, if another instrument logged it and"
                    + " its readings were merged into the log.");
    private static final Key<String> PRESSED = Key.maybe(
            "pressed",
            COLUMN,
            "Column that says which taxel the load cell presses: its number, counted from 1 over all taxels in order; 0"
                    + " for a plate on all of them. Without it all force is taken as pressed by a plate.");

    private static Map<String, Readings.Scale> scales() {
        Map<String, Readings.Scale> scales = new LinkedHashMap<>();
        for (Readings.Scale scale : Readings.Scale.values()) {
            scales.put(scale.symbol(), scale);
        }
        return scales;
    }

    static final Section<Readings> READINGS = Section.of(
                    "readings",
                    "The columns of a log.",
                    List.of(TIME, SEQUENCE, TAXELS, UNIT, TEMPERATURE, AMBIENT, FORCE, FORCE_TIME, PRESSED),
                    ReadingKeys::readings)
            .checked(ReadingKeys::eachColumnOnce);

    private static Readings readings(Bound b) {
        Map<String, String> temperature = new LinkedHashMap<>();
        b.find(TEMPERATURE).ifPresent(given -> {
            for (String pad : b.get(TAXELS).keySet()) {
                String column = given.getOrDefault(pad, given.get(PerPad.ALL));
                if (column != null) {
                    temperature.put(pad, column);
                }
            }
        });
        return new Readings(
                b.get(TIME).column(),
                b.get(TIME).tick(),
                b.find(SEQUENCE),
                b.get(TAXELS),
                b.get(UNIT),
                temperature,
                b.find(AMBIENT),
                b.find(FORCE),
                b.find(FORCE_TIME),
                b.find(PRESSED));
    }

    private static void eachColumnOnce(Bound b) {
        Map<String, Key<?>> seen = new LinkedHashMap<>();
        List<String> taken = new ArrayList<>();
        b.find(TIME).ifPresent(t -> once(t.column(), TIME, seen, b));
        b.find(SEQUENCE).ifPresent(c -> once(c, SEQUENCE, seen, b));
        b.find(TAXELS).ifPresent(t -> t.values().forEach(taken::addAll));
        taken.forEach(c -> once(c, TAXELS, seen, b));
        b.find(TEMPERATURE).ifPresent(t -> t.values().stream().distinct().forEach(c -> once(c, TEMPERATURE, seen, b)));
        b.find(AMBIENT).ifPresent(c -> once(c, AMBIENT, seen, b));
        b.find(FORCE).ifPresent(c -> once(c, FORCE, seen, b));
        b.find(FORCE_TIME).ifPresent(t -> once(t.column(), FORCE_TIME, seen, b));
        b.find(PRESSED).ifPresent(c -> once(c, PRESSED, seen, b));
    }

    private static void once(String column, Key<?> key, Map<String, Key<?>> seen, Bound b) {
        Key<?> first = seen.putIfAbsent(column, key);
        if (first != null) {
            b.fault(
                    key,
                    "column '" + Words.clip(column) + "' is named twice, under " + first.name() + " and under "
                            + key.name(),
                    "each column once");
        }
    }

    /** Whether each pad with columns has as many as chips. */
    static void checkCounts(Bound b, Key<Readings> key, Map<String, Integer> chips) {
        b.find(key)
                .ifPresent(readings -> readings.taxels().forEach((pad, columns) -> {
                    Integer count = chips.get(pad);
                    if (count != null && count != columns.size()) {
                        b.fault(
                                key,
                                "pad '" + pad + "' has " + count + " chips but " + Words.entries(columns.size())
                                        + " under readings",
                                "one column per chip, in order along the strip");
                    }
                }));
    }
}
