package gripwright.signal;

import gripwright.pad.Readings;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is needed to turn readings into forces.
 *
 * @param unit of the readings: Pa or counts
 * @param plate whether the models hold for the force of a plate on the whole pad
 * @param taxels in the order of the log
 * @param slopes per column of a taxel that was pressed alone the slopes of all taxels' readings [reading/N], NaN where a
 *     taxel was not fitted; empty without such presses
 */
public record Decoding(String unit, boolean plate, List<Cell> taxels, Map<String, List<Double>> slopes) {
    /** A taxel; without a model it gives no force, and {@code words} say why; {@code log} it was made from, if known. */
    public record Cell(String column, String pad, Optional<TaxelModel> model, String words, Optional<String> log) {}

    public Decoding {
        taxels = List.copyOf(taxels);
        slopes = Map.copyOf(slopes);
    }

    /** Why it does not hold for these columns, after the name of its file; empty if it does. */
    public Optional<String> misfit(Readings readings) {
        List<String> columns = taxels.stream().map(Cell::column).toList();
        if (!columns.equals(readings.taxelColumns())) {
            return Optional.of("was made for other taxels than pads.yaml names now: " + columns + " and "
                    + readings.taxelColumns() + "; calibrate again");
        }
        return unit.equals(readings.unit().base())
                ? Optional.empty()
                : Optional.of("counts in " + unit + ", pads.yaml in "
                        + readings.unit().symbol() + "; calibrate again");
    }

    /** What a calibration says. */
    public static Decoding of(Calibration c) {
        List<Cell> cells = c.taxels().stream()
                .map(t -> new Cell(
                        t.column(),
                        t.pad(),
                        t.model(),
                        t.model().isPresent() ? "" : t.state().words(),
                        Optional.empty()))
                .toList();
        LinkedHashMap<String, List<Double>> slopes = new LinkedHashMap<>();
        for (Taxel pressed : c.taxels()) {
            List<Double> row = c.taxels().stream()
                    .map(reads -> c.crossTalk().stream()
                            .filter(s -> s.pressed() == pressed.number() && s.reads() == reads.number())
                            .mapToDouble(Calibration.Share::slope)
                            .findFirst()
                            .orElse(Double.NaN))
                    .toList();
            if (row.stream().anyMatch(Double::isFinite)) {
                slopes.put(pressed.column(), row);
            }
        }
        return new Decoding(c.unit(), c.plate(), cells, slopes);
    }
}
