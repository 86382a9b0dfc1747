package gripwright.files;

import gripwright.pad.Readings;
import gripwright.signal.SensorLog;
import gripwright.units.Dimension;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import gripwright.units.Unit;
import gripwright.units.UnitFault;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A log of pads, read by the names that pads.yaml gives its columns, in seconds, newtons, pascals or counts, and degC.
 * Rows come one at a time from {@link #next}, or all at once from {@link #all}.
 */
public final class PadLog implements AutoCloseable {
    private final LogReader reader;
    private final Readings names;
    private final List<String> pads;
    private final List<String> columns = new ArrayList<>();
    private final List<Double> factors = new ArrayList<>();
    private final List<String> taxels;
    private final List<String> padOf = new ArrayList<>();
    private final Map<String, Integer> temperature = new LinkedHashMap<>();
    private int ambient = -1;
    private int force = -1;
    private int pressed = -1;
    private double[] row = new double[0];
    private double last = Double.NEGATIVE_INFINITY;
    private long back;
    private long timeless;

    private PadLog(LogReader reader, Readings names, Optional<String> reference, boolean calibrating) {
        this.reader = reader;
        this.names = names;
        this.pads = List.copyOf(names.taxels().keySet());
        this.taxels = names.taxelColumns();
        Map<String, String> why = new LinkedHashMap<>();
        add(names.time(), names.tick(), "readings: time in pads.yaml", why);
        for (String pad : pads) {
            for (String column : names.taxels().getOrDefault(pad, List.of())) {
                add(column, names.unit().factor(), "a taxel of " + pad + " in pads.yaml", why);
                padOf.add(pad);
            }
        }
        for (String pad : pads) {
            String column = names.temperature().get(pad);
            if (column != null) {
                int known = columns.indexOf(column);
                temperature.put(pad, known >= 0 ? known : add(column, 1, "readings: temperature in pads.yaml", why));
            }
        }
        if (names.ambient().isPresent()) {
            double factor =
                    names.unit() == Readings.Scale.COUNTS ? 1 : names.unit().factor();
            ambient = add(names.ambient().get(), factor, "readings: ambient in pads.yaml", why);
        }
        if (calibrating) {
            force = add(reference.orElseThrow(), 1, "the reference", why);
            if (names.pressed().isPresent()) {
                pressed = add(names.pressed().get(), 1, "readings: pressed in pads.yaml", why);
            }
        }
        reader.choose(columns, why);
        units();
    }

    private int add(String column, double factor, String because, Map<String, String> why) {
        columns.add(column);
        factors.add(factor);
        why.put(column, because);
        return columns.size() - 1;
    }

    /**
     * Opens a log to calibrate from.
     *
     * @param reference column of the load cell
     * @throws LogFault if it has not the columns or the units
     */
    public static PadLog toCalibrate(Path path, Readings names, String reference) throws IOException {
        return open(path, names, Optional.of(reference), true);
    }

    /** Opens a log to turn into forces. */
    public static PadLog toDecode(Path path, Readings names) throws IOException {
        return open(path, names, Optional.empty(), false);
    }

    private static PadLog open(Path path, Readings names, Optional<String> reference, boolean calibrating)
            throws IOException {
        LogReader reader = LogReader.open(path);
        try {
            return new PadLog(reader, names, reference, calibrating);
        } catch (RuntimeException e) {
            reader.close();
            throw e;
        }
    }

    /** Where the log's head names units, they must be those of pads.yaml; forces are converted. */
    private void units() {
        String first = "";
        String firstColumn = "";
        for (String column : taxels) {
            String unit = reader.unit(column);
            if (first.isEmpty()) {
                first = unit;
                firstColumn = column;
            } else if (!unit.isEmpty() && !unit.equals(first)) {
                throw fault(
                        "mixed units: " + firstColumn + " is in " + first + " and " + column + " in " + unit,
                        "all taxels in one unit");
            }
        }
        if (!first.isEmpty() && !first.equals(names.unit().symbol())) {
            throw fault(
                    "the log's head says that " + firstColumn + " is in " + first + ", pads.yaml (readings: unit) says "
                            + names.unit().symbol(),
                    "the same unit in both");
        }
        for (int column : temperature.values()) {
            String unit = reader.unit(columns.get(column));
            if (!unit.isEmpty() && !unit.equals("degC")) {
                throw fault(columns.get(column) + " is in " + unit, "a temperature in degC");
            }
        }
        if (force >= 0) {
            convert(force, Measure.FORCE);
        }
        if (ambient >= 0) {
            convert(ambient, Measure.PRESSURE);
        }
        String clock = reader.unit(names.time());
        if (!clock.isEmpty()) {
            double tick = factor(names.time(), clock, Measure.TIME);
            if (Math.abs(tick / names.tick() - 1) > 1e-9) {
                throw fault(
                        "the log's head says that " + names.time() + " is in " + clock
                                + ", pads.yaml (readings: time) says otherwise",
                        "the same unit in both, such as time: {column: " + names.time() + ", unit: " + clock + "}");
            }
        }
    }

    private void convert(int column, Measure measure) {
        String unit = reader.unit(columns.get(column));
        if (!unit.isEmpty()) {
            factors.set(column, factor(columns.get(column), unit, measure));
        }
    }

    private double factor(String column, String text, Measure measure) {
        try {
            Unit unit = QuantityText.unit(text);
            Dimension dimension = unit.dimension();
            if (dimension.equals(measure.dimension())) {
                return unit.factor();
            }
        } catch (UnitFault e) {
            // said below
        }
        throw fault(
                "the log's head says that " + column + " is in " + text,
                measure.words() + " such as " + measure.example());
    }

    private LogFault fault(String message, String expected) {
        return new LogFault(reader.file(), 0, message, expected);
    }

    public List<String> taxels() {
        return taxels;
    }

    /**
     * The next row whose time is later than that before it.
     *
     * @return false after the last row
     */
    public boolean next() throws IOException {
        if (row.length == 0) {
            row = new double[columns.size()];
        }
        while (reader.next(row)) {
            for (int k = 0; k < row.length; k++) {
                row[k] *= factors.get(k);
            }
            if (Double.isNaN(row[0])) {
                timeless++;
            } else if (row[0] <= last) {
                back++;
            } else {
                last = row[0];
                return true;
            }
        }
        return false;
    }

    /** Device time of the row [s]. */
    public double time() {
        return row[0];
    }

    /** Reading of a taxel, counted from 0 [Pa or counts]; NaN if missing. */
    public double reading(int taxel) {
        return row[1 + taxel];
    }

    /** Temperature of a taxel's pad [degC]; NaN if there is no such column. */
    public double temperature(int taxel) {
        Integer column = temperature.get(padOf.get(taxel));
        return column == null ? Double.NaN : row[column];
    }

    /** Ambient pressure [Pa]; NaN if there is no such column. */
    public double ambient() {
        return ambient < 0 ? Double.NaN : row[ambient];
    }

    /** What was odd, in sentences; complete after the last row. */
    public List<String> remarks() {
        List<String> all = new ArrayList<>(reader.remarks());
        if (back > 0) {
            all.add(back + " rows have a stamp that is not later than the one before; left out");
        }
        if (timeless > 0) {
            all.add(timeless + " rows have no stamp; left out");
        }
        return all;
    }

    /** The whole log, to calibrate from. */
    public SensorLog all() throws IOException {
        double[][] data = new double[columns.size()][4096];
        int n = 0;
        while (next()) {
            if (n == data[0].length) {
                for (int k = 0; k < data.length; k++) {
                    data[k] = Arrays.copyOf(data[k], n + n / 2);
                }
            }
            for (int k = 0; k < data.length; k++) {
                data[k][n] = row[k];
            }
            n++;
        }
        if (n < 2) {
            throw fault("the log has " + n + " rows that can be used", "rows under the column names");
        }
        for (int k = 0; k < data.length; k++) {
            data[k] = Arrays.copyOf(data[k], n);
        }
        List<SensorLog.Channel> channels = new ArrayList<>();
        for (int c = 0; c < taxels.size(); c++) {
            Integer warmth = temperature.get(padOf.get(c));
            channels.add(new SensorLog.Channel(
                    taxels.get(c), padOf.get(c), c + 1, data[1 + c], warmth == null ? new double[0] : data[warmth]));
        }
        return new SensorLog(
                names.unit().base(),
                data[0],
                data[force],
                ambient < 0 ? new double[0] : data[ambient],
                pressed < 0 ? new double[0] : data[pressed],
                channels);
    }

    @Override
    public void close() throws IOException {
        reader.close();
    }
}
