package gripwright.files;

import gripwright.pad.Readings;
import gripwright.signal.OwnClock;
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
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

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
    private int forceTime = -1;
    private int pressed = -1;
    private int firstNumber = 1;
    private int lastOfAll;
    private final MergedReference merged = new MergedReference();
    private double[] row = new double[0];
    private double last = Double.NEGATIVE_INFINITY;
    private long back;
    private long timeless;

    /**
     * What to calibrate against.
     *
     * @param column of the load cell
     * @param clock its own, if another instrument logged it
     * @param tick one unit of that clock [s]; 0 to take it from the log's head, or for seconds if that says nothing
     * @param pad the only pad to read; empty for all
     */
    public record Against(String column, Optional<String> clock, double tick, Optional<String> pad) {
        /** A load cell that the device itself reads, for all pads. */
        public static Against column(String column) {
            return new Against(column, Optional.empty(), 0, Optional.empty());
        }
    }

    private PadLog(LogReader reader, Readings all, Optional<Against> against) {
        Readings names = against.flatMap(Against::pad).map(all::only).orElse(all);
        this.reader = reader;
        this.names = names;
        this.firstNumber = against.flatMap(Against::pad).map(all::firstNumber).orElse(1);
        this.lastOfAll = all.taxelColumns().size();
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
        Set<String> clocks = new HashSet<>(Set.of(names.time()));
        if (against.isPresent()) {
            force = add(against.get().column(), 1, "the reference", why);
            if (against.get().clock().isPresent()) {
                String clock = against.get().clock().get();
                clocks.add(clock);
                forceTime = add(clock, Math.max(against.get().tick(), 0), "the reference's own clock", why);
            }
            if (names.pressed().isPresent()) {
                pressed = add(names.pressed().get(), 1, "readings: pressed in pads.yaml", why);
            }
        }
        reader.choose(columns, why, clocks);
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
     * @throws LogFault if it has not the columns or the units
     */
    public static PadLog toCalibrate(Path path, Readings names, Against against) throws IOException {
        return open(path, names, Optional.of(against));
    }

    /** Opens a log to turn into forces. */
    public static PadLog toDecode(Path path, Readings names) throws IOException {
        return open(path, names, Optional.empty());
    }

    private static PadLog open(Path path, Readings names, Optional<Against> against) throws IOException {
        LogReader reader = LogReader.open(path);
        try {
            return new PadLog(reader, names, against);
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
        clock(names.time(), 0, "time");
        if (forceTime >= 0) {
            clock(columns.get(forceTime), forceTime, "force time");
        }
    }

    /** A clock's unit stands in pads.yaml, in the log's head, or in both alike; else it is seconds. */
    private void clock(String column, int at, String key) {
        String unit = reader.unit(column);
        double given = factors.get(at);
        if (unit.isEmpty()) {
            factors.set(at, given > 0 ? given : 1);
            return;
        }
        double tick = factor(column, unit, Measure.TIME);
        if (given > 0 && Math.abs(tick / given - 1) > 1e-9) {
            throw fault(
                    "the log's head says that " + column + " is in " + unit + ", pads.yaml (readings: " + key
                            + ") says otherwise",
                    "the same unit in both, such as " + key + ": {column: " + column + ", unit: " + unit + "}");
        }
        factors.set(at, tick);
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
            if (forceTime >= 0) {
                take(row[0] > last ? row[0] : last);
            }
            if (Double.isNaN(row[0])) {
                timeless += forceTime >= 0 && !Double.isNaN(row[forceTime]) ? 0 : 1;
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
        merged.remark().ifPresent(all::add);
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
        if (pressed >= 0 && taxels.size() < lastOfAll) {
            elsewhere(data[pressed]);
        }
        List<SensorLog.Channel> channels = new ArrayList<>();
        for (int c = 0; c < taxels.size(); c++) {
            Integer warmth = temperature.get(padOf.get(c));
            channels.add(new SensorLog.Channel(
                    taxels.get(c),
                    padOf.get(c),
                    firstNumber + c,
                    data[1 + c],
                    warmth == null ? new double[0] : data[warmth]));
        }
        return new SensorLog(
                names.unit().base(),
                data[0],
                forceTime < 0 ? data[force] : new double[0],
                ambient < 0 ? new double[0] : data[ambient],
                pressed < 0 ? new double[0] : data[pressed],
                channels,
                forceTime < 0 ? Optional.empty() : Optional.of(ownClock()));
    }

    private void take(double beside) {
        Optional<String> fault = merged.take(beside, row[forceTime], row[force]);
        if (fault.isPresent()) {
            throw new LogFault(
                    reader.file(),
                    reader.line(),
                    "the reference's own clock " + columns.get(forceTime) + " " + fault.get(),
                    "stamps that rise, or stay with the same force until the next reading; sort the load cell's readings"
                            + " before merging them, or name another column");
        }
    }

    private OwnClock ownClock() {
        try {
            return merged.all();
        } catch (IllegalArgumentException e) {
            throw fault(
                    e.getMessage() + " (column " + columns.get(forceTime) + ")",
                    "the column of the load cell's own clock and that of its readings, both filled");
        }
    }

    /** Presses on taxels of pads that are not read are no presses on these. */
    private void elsewhere(double[] number) {
        for (int i = 0; i < number.length; i++) {
            boolean here = number[i] >= firstNumber && number[i] < firstNumber + taxels.size();
            boolean another = number[i] >= 1 && number[i] <= lastOfAll && !here;
            number[i] = another ? -1 : number[i];
        }
    }

    @Override
    public void close() throws IOException {
        reader.close();
    }
}
