package gripwright.bench;

import gripwright.files.CalibrationFile;
import gripwright.files.ProjectFaults;
import gripwright.pad.PadSetup;
import gripwright.pad.Readings;
import gripwright.signal.Decoder;
import gripwright.signal.Decoding;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Forces beside the readings, by the calibration of the project, row by row as {@code decode} works them out: the zero is
 * the mean of the log's first second.
 */
final class NowForces {
    private static final double ZERO_SECONDS = 1;

    private final Readings readings;
    private final Decoder decoder;
    private final List<Decoder.PadPlace> pads;
    private final int[] taxels;
    private final int[] temperature;
    private final int ambient;
    private final int time;
    private final double[] reading;
    private final double[] warmth;
    private final List<Decoder.Event> events = new ArrayList<>();
    private double last = Double.NEGATIVE_INFINITY;
    private boolean there;

    private NowForces(PadSetup setup, Readings readings, Decoding how, List<String> columns) {
        this.readings = readings;
        this.pads = Decoder.places(setup.pads(), readings);
        this.decoder = new Decoder(how, pads, ZERO_SECONDS, setup.judging().zeros());
        this.taxels =
                readings.taxelColumns().stream().mapToInt(columns::indexOf).toArray();
        this.reading = new double[taxels.length];
        this.warmth = new double[taxels.length];
        this.temperature = readings.taxels().entrySet().stream()
                .flatMapToInt(pad -> pad.getValue().stream()
                        .mapToInt(c -> columns.indexOf(readings.temperature().getOrDefault(pad.getKey(), ""))))
                .toArray();
        this.ambient = readings.ambient().map(columns::indexOf).orElse(-1);
        this.time = columns.indexOf(readings.time());
    }

    /** Forces, or why there are none. */
    record Answer(@Nullable NowForces forces, String why) {}

    /**
     * By the calibration of a project.
     *
     * @param columns that are read of the log
     * @param units of the log's columns, as its head has them
     */
    static Answer of(Path folder, Optional<PadSetup> setup, List<String> columns, Map<String, String> units) {
        Optional<Readings> named = setup.flatMap(PadSetup::readings);
        if (named.isEmpty() || !Files.isRegularFile(folder.resolve(CalibrationFile.NAME), LinkOption.NOFOLLOW_LINKS)) {
            return new Answer(null, "");
        }
        Readings readings = named.get();
        try {
            Decoding how = CalibrationFile.read(folder);
            Optional<String> misfit = how.misfit(readings);
            if (misfit.isPresent()) {
                return new Answer(null, CalibrationFile.NAME + " " + misfit.get());
            }
            List<String> taxels = readings.taxelColumns();
            if (!columns.containsAll(taxels) || !columns.contains(readings.time())) {
                return new Answer(null, "the log has not all columns that pads.yaml names");
            }
            String unit = readings.unit().symbol();
            if (taxels.stream().anyMatch(c -> !units.getOrDefault(c, unit).equals(unit))) {
                return new Answer(null, "the log's taxels are not in " + unit + ", which pads.yaml names");
            }
            return new Answer(new NowForces(setup.get(), readings, how, columns), "");
        } catch (ProjectFaults e) {
            return new Answer(null, String.valueOf(e.getMessage()));
        }
    }

    /** Takes the values of one row, in the order of the columns. */
    void next(double[] values) {
        double seconds = values[time] * readings.tick();
        if (!(seconds > last)) {
            return; // as in decode: a row without a later stamp cannot be placed in time
        }
        last = seconds;
        double factor = readings.unit().factor();
        for (int i = 0; i < taxels.length; i++) {
            reading[i] = values[taxels[i]] * factor;
            warmth[i] = temperature[i] < 0 ? Double.NaN : values[temperature[i]];
        }
        there = decoder.step(seconds, reading, warmth, ambient < 0 ? Double.NaN : values[ambient] * factor, events);
        events.clear();
    }

    /** False while the zero is taken. */
    boolean there() {
        return there;
    }

    /** Force on a taxel, in the order of pads.yaml [N]. */
    double force(int taxel) {
        return decoder.force(taxel);
    }

    /** Name, force, its standard deviation and touch of each pad. */
    List<Wire.Raw> pads() {
        List<Wire.Raw> out = new ArrayList<>();
        for (int p = 0; p < pads.size(); p++) {
            out.add(Wire.raw(
                    "name", pads.get(p).name(),
                    "force", Wire.number(decoder.total(p), 3),
                    "error", Wire.number(decoder.totalError(p), 3),
                    "touched", decoder.touched(p)));
        }
        return out;
    }
}
