package gripwright.signal;

import gripwright.pad.PadDesign;
import gripwright.pad.Readings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the project says about the columns of its source.
 *
 * @param given false if the project names no columns: then those of the first line are taken, and known names among
 *     them ({@code t}, {@code seq}, {@code p0} to {@code p9999}, {@code temp}, {@code F}, {@code ambient}) are looked at
 * @param order every column, in the order of a source that does not name them
 * @param wanted columns that a source which names its own must have
 * @param time column with the source's own time
 * @param tick one unit of that column [s]
 * @param sequence column that counts readings
 * @param numbers columns other than these that hold numbers
 * @param force that of these which is a reference load cell
 */
public record Layout(
        boolean given,
        List<String> order,
        List<String> wanted,
        Optional<String> time,
        double tick,
        Optional<String> sequence,
        List<Taxel> taxels,
        List<String> numbers,
        Optional<String> force) {
    private static final String FORCE = "F";

    /**
     * One sensing cell.
     *
     * @param pad its pad, empty if not known
     * @param least lowest and
     * @param greatest highest value it can read, in the unit of the column; NaN if not known
     */
    public record Taxel(String column, String pad, double least, double greatest) {}

    /** Of a project that says nothing. */
    public static final Layout UNKNOWN = new Layout(
            false, List.of(), List.of(), Optional.empty(), 1, Optional.empty(), List.of(), List.of(), Optional.empty());

    public Layout {
        order = List.copyOf(order);
        wanted = List.copyOf(wanted);
        taxels = List.copyOf(taxels);
        numbers = List.copyOf(numbers);
    }

    /** Of a project that names its columns; the ranges of the taxels are those of their chips. */
    public static Layout of(Readings r, List<PadDesign> pads) {
        List<Taxel> taxels = new ArrayList<>();
        r.taxels().forEach((name, columns) -> {
            PadDesign pad = pads.stream()
                    .filter(p -> p.name().equals(name))
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException("readings of a pad that is none: " + name));
            boolean counts = r.unit() == Readings.Scale.COUNTS; // what a count is only a calibration knows
            double least = counts ? Double.NaN : pad.chip().least() / r.unit().factor();
            double greatest =
                    counts ? Double.NaN : pad.chip().greatest() / r.unit().factor();
            columns.forEach(column -> taxels.add(new Taxel(column, name, least, greatest)));
        });
        List<String> wanted = new ArrayList<>(List.of(r.time()));
        r.sequence().ifPresent(wanted::add);
        wanted.addAll(r.taxelColumns());
        List<String> numbers = new ArrayList<>(r.temperature().values());
        r.ambient().ifPresent(numbers::add);
        r.force().ifPresent(numbers::add);
        r.forceTime().ifPresent(clock -> numbers.add(clock.column()));
        r.pressed().ifPresent(numbers::add);
        return new Layout(
                true,
                r.columns(),
                wanted,
                Optional.of(r.time()),
                r.tick(),
                r.sequence(),
                taxels,
                numbers.stream().distinct().toList(),
                r.force());
    }

    /** This layout, or for a project that says nothing what can be told from the names. */
    public Layout within(List<String> names) {
        if (given) {
            return this;
        }
        List<Taxel> cells = new ArrayList<>();
        List<String> others = new ArrayList<>();
        for (String name : names) {
            if (name.matches("p[0-9]{1,4}")) {
                cells.add(new Taxel(name, "", Double.NaN, Double.NaN));
            } else if (List.of("temp", FORCE, "ambient").contains(name)) {
                others.add(name);
            }
        }
        return new Layout(
                false,
                names,
                List.of(),
                names.contains("t") ? Optional.of("t") : Optional.empty(),
                1,
                names.contains("seq") ? Optional.of("seq") : Optional.empty(),
                cells,
                others,
                names.contains(FORCE) ? Optional.of(FORCE) : Optional.empty());
    }
}
