package gripwright.cli;

import gripwright.closing.ChipReadings;
import gripwright.closing.ChipReadings.Chip;
import gripwright.closing.ChipReadings.Value;
import gripwright.closing.Policy;
import gripwright.closing.Sensing;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import java.util.List;
import java.util.Optional;

/** What the chips read through a closing. */
final class SensedText {
    private static final int DIGITS = 3;
    private static final int CSV_DIGITS = 9;

    private SensedText() {}

    static String of(Policy policy, ChipReadings r) {
        StringBuilder text = new StringBuilder();
        text.append(Words.wrapped("policy   " + policy.word() + ": " + policy.says()))
                .append('\n');
        for (ChipReadings.Stop stop : r.stops()) {
            text.append(Words.wrapped("stopped  " + stop.what() + " after " + time(stop.stopped()) + ": "
                            + name(r.chips().get(stop.chip())) + " had felt it at " + time(stop.arrived())))
                    .append('\n');
        }
        if (!r.story().isEmpty()) {
            text.append(Words.wrapped("policy   " + r.story())).append('\n');
        }
        if (r.moved() != 0) {
            text.append("arm      moved the hand by x ")
                    .append(Say.length(r.moved()))
                    .append(" before it tightened\n");
        }
        text.append("closing  took ")
                .append(time(r.end()))
                .append("; ")
                .append(Say.count(r.chips().size(), "chip", "chips"))
                .append(" read every ")
                .append(time(r.period()))
                .append("\n\n");
        text.append(table(r)).append("\n\n");
        text.append(Words.wrapped(Sensing.READING)).append('\n');
        text.append(Words.wrapped(Sensing.TIME));
        return text.toString();
    }

    private static Table table(ChipReadings r) {
        Table table =
                new Table("lrrrrr", "chip", "alarm at", "first felt after", "most read", "at rest", "end of range");
        int silent = 0;
        for (Chip chip : r.chips()) {
            Optional<Value> first = felt(chip);
            if (first.isEmpty()) {
                silent++;
                continue;
            }
            double most = chip.values().stream()
                    .mapToDouble(v -> v.pressure() - chip.zero())
                    .max()
                    .orElse(0);
            Value last = chip.values().get(chip.values().size() - 1);
            table.row(
                    name(chip),
                    Say.pressure(chip.threshold()),
                    time(first.get().arrived()),
                    Say.pressure(most),
                    last.sampled() > r.end() ? Say.pressure(last.pressure() - chip.zero()) : "-",
                    chip.values().stream()
                            .filter(Value::saturated)
                            .findFirst()
                            .map(v -> "from " + time(v.sampled()))
                            .orElse("-"));
        }
        if (silent > 0) {
            table.row(Say.count(silent, "other", "others"), "", "never", "", "", "");
        }
        return table;
    }

    /** The first reading over the threshold. */
    static Optional<Value> felt(Chip chip) {
        return chip.values().stream()
                .filter(v -> v.pressure() - chip.zero() > chip.threshold())
                .findFirst();
    }

    static String name(Chip chip) {
        return chip.strip() + " " + (chip.index() + 1);
    }

    private static String time(double seconds) {
        return QuantityText.format(seconds, Measure.TIME, DIGITS);
    }

    /** One line per reading, chip by chip; the name of a pad in quotes. */
    static String csv(ChipReadings r) {
        StringBuilder text = new StringBuilder("pad,chip,sampled_s,arrived_s,pressure_Pa,rise_Pa,saturated\n");
        for (Chip chip : r.chips()) {
            String head = quoted(chip.strip()) + "," + (chip.index() + 1) + ",";
            for (Value v : chip.values()) {
                text.append(head)
                        .append(number(v.sampled()))
                        .append(',')
                        .append(number(v.arrived()))
                        .append(',')
                        .append(number(v.pressure()))
                        .append(',')
                        .append(number(v.rise()))
                        .append(',')
                        .append(v.saturated() ? 1 : 0)
                        .append('\n');
            }
        }
        return text.toString();
    }

    private static String number(double value) {
        return QuantityText.number(value, CSV_DIGITS);
    }

    private static String quoted(String name) {
        return List.of(",", "\"", "\n").stream().anyMatch(name::contains)
                ? "\"" + name.replace("\"", "\"\"") + "\""
                : name;
    }
}
