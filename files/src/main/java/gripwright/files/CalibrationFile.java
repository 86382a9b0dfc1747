package gripwright.files;

import gripwright.pad.Readings;
import gripwright.signal.Calibration;
import gripwright.signal.Decoding;
import gripwright.signal.TaxelModel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** calibration.yaml: written by a calibration, read to turn logs into forces. */
public final class CalibrationFile {
    public static final String NAME = "calibration.yaml";

    private CalibrationFile() {}

    /** A plain number, of any size. */
    private record Plain() implements Kind<Double> {
        @Override
        public @Nullable Double read(Tree tree, String path, Reading reading) {
            if (tree instanceof Tree.Text text) {
                try {
                    double value = Double.parseDouble(text.value());
                    char last = text.value().charAt(text.value().length() - 1);
                    if (Double.isFinite(value) && last >= '0' && last <= '9') {
                        return value;
                    }
                } catch (NumberFormatException e) {
                    // refused below
                }
            }
            return refuse(tree, path, reading);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            return Json.object("type", "number");
        }

        @Override
        public String words() {
            return "a number";
        }
    }

    private static final Kind<Double> NUMBER = new Plain();
    private static final Kind<Double> ABOVE_0 = new Positive();

    /** A plain number above 0. */
    private record Positive() implements Kind<Double> {
        @Override
        public @Nullable Double read(Tree tree, String path, Reading reading) {
            Double value = NUMBER.read(tree, path, reading);
            return value == null || value > 0 ? value : refuse(tree, path, reading);
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            Map<String, Object> schema = Json.object("type", "number");
            schema.put("exclusiveMinimum", 0);
            return schema;
        }

        @Override
        public String words() {
            return "a number above 0";
        }
    }

    private static Key<Double> number(String name, String says) {
        return Key.required(name, NUMBER, says);
    }

    private static final Key<String> PAD = Key.required("pad", new Kinds.Line(), "Its pad.");
    private static final Key<String> TAXEL_LOG =
            Key.maybe("log", new Kinds.Line(), "The log it was made from, if another than the file's.");
    private static final Key<String> NOT = Key.maybe("not fitted", new Kinds.Line(), "Why it has no numbers.");
    private static final Key<Double> ZERO = Key.maybe("zero", NUMBER, "Reading without force, play in its middle.");
    private static final Key<Double> SENSITIVITY = Key.maybe("sensitivity", ABOVE_0, "Reading per N.");
    private static final Key<Double> QUADRATIC = Key.maybe("quadratic", NUMBER, "Reading per N^2.");
    private static final Key<Double> CREEP = Key.maybe("creep", NUMBER, "Reading per N in the long run.");
    private static final Key<Double> CREEP_TIME = Key.maybe("creep time", ABOVE_0, "Seconds.");
    private static final Key<Double> PLAY = Key.maybe("play", NUMBER, "Half the width of the dead band in N.");
    private static final Key<Double> TEMPERATURE = Key.maybe("temperature", NUMBER, "Reading per K.");
    private static final Key<Double> AT_TEMPERATURE = Key.maybe("at temperature", NUMBER, "Reference in degC.");
    private static final Key<Double> AMBIENT = Key.maybe("ambient", NUMBER, "Reading per Pa of ambient pressure.");
    private static final Key<Double> AT_AMBIENT = Key.maybe("at ambient", NUMBER, "Reference in Pa.");
    private static final Key<Double> NOISE = Key.maybe("noise", NUMBER, "Standard deviation of one reading.");
    private static final Key<Double> ERROR =
            Key.maybe("sensitivity error", NUMBER, "One standard deviation, as a share.");
    private static final Key<Double> TOP = Key.maybe("fitted to", NUMBER, "Greatest force in N.");
    private static final Key<Double> CLIP = Key.maybe("clips at", NUMBER, "Reading at which it stops rising.");

    private static final List<Key<Double>> NEEDED =
            List.of(ZERO, SENSITIVITY, QUADRATIC, CREEP, PLAY, NOISE, ERROR, TOP);

    private static final Section<Decoding.Cell> TAXEL = Section.of(
                    "taxel",
                    "A taxel.",
                    List.of(
                            PAD,
                            TAXEL_LOG,
                            NOT,
                            ZERO,
                            SENSITIVITY,
                            QUADRATIC,
                            CREEP,
                            CREEP_TIME,
                            PLAY,
                            TEMPERATURE,
                            AT_TEMPERATURE,
                            AMBIENT,
                            AT_AMBIENT,
                            NOISE,
                            ERROR,
                            TOP,
                            CLIP),
                    CalibrationFile::cell)
            .checked(CalibrationFile::checkCell);

    private static final Key<Double> VERSION = number("version", "Of this file's form: 1.");
    private static final Key<String> LOG = Key.required("log", new Kinds.Line(), "The log it was made from.");
    private static final Key<String> UNIT =
            Key.required("unit", Kinds.Choice.of("Pa", "Pa", "counts", "counts"), "Unit of the readings.");
    private static final Key<Boolean> PRESSED =
            Key.required("pressed by", Kinds.Choice.of("plate", true, "probe", false), "What pressed.");
    private static final Key<Map<String, Decoding.Cell>> TAXELS = Key.required(
            "taxels", new Kinds.Named<>(TAXEL, 1, 512, "taxels", null, null), "The taxels, by their columns.");
    private static final Key<Map<String, List<String>>> SLOPES = Key.maybe(
            "slopes",
            new Kinds.Named<>(new Kinds.Many<>(new Kinds.Line(), 1, 512, "numbers"), 0, 512, "taxels", null, null),
            "Per taxel that was pressed alone the slopes of all readings, reading per N; - where there is none.");

    private static final Section<Decoding> FILE = Section.of(
            "calibration",
            "calibration.yaml, written by `gripwright calibrate`.",
            List.of(VERSION, LOG, UNIT, PRESSED, TAXELS, SLOPES),
            CalibrationFile::decoding);

    private static void checkCell(Bound b) {
        if (b.isGiven(NOT)) {
            return;
        }
        for (Key<Double> key : NEEDED) {
            if (!b.isGiven(key)) {
                b.reading()
                        .fault(
                                b.place(),
                                "key '" + key.name() + "' is missing in " + b.owner(),
                                key.name() + ": a number, or `not fitted:` with the reason");
            }
        }
    }

    private static Decoding.Cell cell(Bound b) {
        if (b.isGiven(NOT)) {
            return new Decoding.Cell(b.name(), b.get(PAD), Optional.empty(), b.get(NOT), b.find(TAXEL_LOG));
        }
        TaxelModel model = new TaxelModel(
                b.get(ZERO),
                b.get(SENSITIVITY),
                b.get(QUADRATIC),
                b.get(CREEP),
                b.find(CREEP_TIME).orElse(1.0),
                b.get(PLAY),
                b.find(TEMPERATURE).orElse(0.0),
                b.find(AMBIENT).orElse(0.0),
                b.find(AT_TEMPERATURE).orElse(Double.NaN),
                b.find(AT_AMBIENT).orElse(Double.NaN),
                b.get(NOISE),
                b.get(ERROR),
                b.get(TOP),
                b.find(CLIP).orElse(Double.NaN));
        return new Decoding.Cell(b.name(), b.get(PAD), Optional.of(model), "", b.find(TAXEL_LOG));
    }

    private static Decoding decoding(Bound b) {
        if (b.get(VERSION) != 1) {
            b.fault(VERSION, "the file has the form " + b.get(VERSION), "version: 1; calibrate again");
        }
        Map<String, List<Double>> slopes = new LinkedHashMap<>();
        b.find(SLOPES)
                .ifPresent(given -> given.forEach((taxel, values) -> {
                    List<Double> row = new ArrayList<>();
                    for (String value : values) {
                        row.add(value.equals("-") ? (Double) Double.NaN : number(value));
                    }
                    if (row.contains(null)
                            || row.size() != b.get(TAXELS).size()
                            || !b.get(TAXELS).containsKey(taxel)) {
                        b.fault(
                                SLOPES,
                                "the slopes of '" + Words.clip(taxel) + "' are not one number per taxel",
                                b.get(TAXELS).size() + " numbers, - where there is none, under the column of a taxel");
                    }
                    slopes.put(
                            taxel,
                            row.stream()
                                    .map(v -> v == null ? (Double) Double.NaN : v)
                                    .toList());
                }));
        List<Decoding.Cell> cells = b.get(TAXELS).values().stream()
                .map(c -> c.log().isPresent()
                        ? c
                        : new Decoding.Cell(c.column(), c.pad(), c.model(), c.words(), b.find(LOG)))
                .toList();
        return new Decoding(b.get(UNIT), b.get(PRESSED), cells, slopes);
    }

    private static @Nullable Double number(String text) {
        try {
            double value = Double.parseDouble(text);
            return Double.isFinite(value) ? (Double) value : null;
        } catch (NumberFormatException e) {
            return null;
        }
    }

    /**
     * Reads the file of a project folder.
     *
     * @throws ProjectFaults with all faults, if there are any or there is no such file
     */
    public static Decoding read(Path folder) {
        Reading reading = new Reading(folder);
        List<Fault> faults = new ArrayList<>();
        SourceText source = reading.source(NAME, faults);
        Tree tree = source == null ? null : TreeReader.read(source, faults);
        reading.addAll(faults);
        Decoding decoding = null;
        if (source != null && tree != null) {
            reading.start(source);
            decoding = FILE.read(tree, "", reading);
        }
        if (decoding == null || reading.faultCount() > 0) {
            throw new ProjectFaults(reading.faults());
        }
        return decoding;
    }

    /**
     * The file's text.
     *
     * @param log name of the log
     * @param made what made it: program and version
     */
    public static String text(Calibration c, String log, String made) {
        return new CalibrationWriter(c, log, made).text();
    }

    /**
     * The file's text where only some pads were calibrated and the others stay as they were.
     *
     * @param all the columns of all pads
     * @param before what the file said; empty if there was none
     */
    public static String text(Calibration c, String log, String made, Readings all, Optional<Decoding> before) {
        return new CalibrationWriter(c, log, made).text(all, before);
    }

    /** Whether a project folder has the file. */
    public static boolean isIn(Path folder) {
        return Files.exists(folder.resolve(NAME));
    }
}
