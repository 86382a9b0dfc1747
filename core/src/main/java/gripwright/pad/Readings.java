package gripwright.pad;

import gripwright.check.Check;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which column of a log holds what.
 *
 * @param time column of the device's clock
 * @param tick one unit of that column [s]
 * @param sequence column of the device's line number
 * @param taxels per pad the columns of its taxels, in order along the strip, row by row
 * @param unit of the taxels' columns
 * @param temperature per pad the column of its temperature [degC]; empty if there is none
 * @param ambient column of a barometer that lies open, in the unit of the taxels or in Pa if they are counts
 * @param force column of a reference force [N]
 * @param forceTime column of that load cell's own clock, if another instrument logged it; empty if the device did
 * @param pressed column that says which taxel is pressed: its number, counted from 1 over all taxels in order, or 0 if a
 *     plate presses on all
 */
public record Readings(
        String time,
        double tick,
        Optional<String> sequence,
        Map<String, List<String>> taxels,
        Scale unit,
        Map<String, String> temperature,
        Optional<String> ambient,
        Optional<String> force,
        Optional<Clock> forceTime,
        Optional<String> pressed) {
    /** A clock's column, one unit of which is so many seconds. */
    public record Clock(String column, double tick) {}

    /** What one unit of a taxel's column is. */
    public enum Scale {
        PA("Pa", 1),
        HPA("hPa", 100),
        KPA("kPa", 1000),
        COUNTS("counts", 1);

        private final String symbol;
        private final double factor;

        Scale(String symbol, double factor) {
            this.symbol = symbol;
            this.factor = factor;
        }

        /** As written in files. */
        public String symbol() {
            return symbol;
        }

        /** One unit in Pa; 1 for counts, which stay counts. */
        public double factor() {
            return factor;
        }

        /** The unit the core computes in: Pa or counts. */
        public String base() {
            return this == COUNTS ? COUNTS.symbol : PA.symbol;
        }
    }

    public Readings {
        Check.positive(tick, "tick of the clock", "s");
        Map<String, List<String>> copy = new LinkedHashMap<>();
        taxels.forEach((pad, columns) -> copy.put(pad, List.copyOf(columns)));
        taxels = Collections.unmodifiableMap(copy);
        temperature = Collections.unmodifiableMap(new LinkedHashMap<>(temperature));
    }

    /** The same for one pad alone; taxels keep their numbers, see {@link #firstNumber}. */
    public Readings only(String pad) {
        List<String> columns = taxels.getOrDefault(pad, List.of());
        Check.that(!columns.isEmpty(), "no pad '" + pad + "' has columns");
        Map<String, String> warmth = new LinkedHashMap<>(temperature);
        warmth.keySet().retainAll(List.of(pad));
        return new Readings(
                time, tick, sequence, Map.of(pad, columns), unit, warmth, ambient, force, forceTime, pressed);
    }

    /** Number of a pad's first taxel, counted from 1 over all taxels in order. */
    public int firstNumber(String pad) {
        int number = 1;
        for (Map.Entry<String, List<String>> e : taxels.entrySet()) {
            if (e.getKey().equals(pad)) {
                return number;
            }
            number += e.getValue().size();
        }
        throw new IllegalArgumentException("no pad '" + pad + "' has columns");
    }

    /** The columns of all taxels, pad after pad. */
    public List<String> taxelColumns() {
        return taxels.values().stream().flatMap(List::stream).toList();
    }

    /** Every column named, each once, the clock first. */
    public List<String> columns() {
        List<String> all = new ArrayList<>();
        all.add(time);
        sequence.ifPresent(all::add);
        all.addAll(taxelColumns());
        all.addAll(temperature.values());
        ambient.ifPresent(all::add);
        force.ifPresent(all::add);
        forceTime.ifPresent(clock -> all.add(clock.column()));
        pressed.ifPresent(all::add);
        return all.stream().distinct().toList();
    }
}
