package gripwright.files;

import gripwright.pad.Readings;
import gripwright.signal.Calibration;
import gripwright.signal.Decoding;
import gripwright.signal.FigureKind;
import gripwright.signal.Taxel;
import gripwright.signal.TaxelModel;
import gripwright.units.QuantityText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Writes calibration.yaml. */
final class CalibrationWriter {
    private static final int DIGITS = 9;

    private final Calibration c;
    private final StringBuilder out = new StringBuilder();

    /**
     * @param log name of the log
     * @param made what made it: program and version
     */
    CalibrationWriter(Calibration c, String log, String made) {
        this.c = c;
        out.append("# Written by ")
                .append(made)
                .append("; `gripwright decode` reads it. Numbers are in ")
                .append(c.unit())
                .append(", N, K, s.\n");
        out.append("version: 1\n");
        out.append("log: ").append(quoted(log)).append('\n');
        out.append("unit: ").append(c.unit()).append('\n');
        out.append("pressed by: ").append(c.plate() ? "plate" : "probe").append('\n');
        out.append("taxels:\n");
    }

    String text() {
        c.taxels().forEach(this::taxel);
        List<String> columns = c.taxels().stream().map(Taxel::column).toList();
        slopes(columns, Decoding.of(c).slopes());
        return out.toString();
    }

    /**
     * @param all the columns of all pads
     * @param before what is kept of taxels that were not calibrated now
     */
    String text(Readings all, Optional<Decoding> before) {
        Map<String, Taxel> now = new LinkedHashMap<>();
        c.taxels().forEach(t -> now.put(t.column(), t));
        all.taxels()
                .forEach((pad, columns) -> columns.forEach(column -> {
                    Taxel taxel = now.get(column);
                    if (taxel != null) {
                        taxel(taxel);
                    } else {
                        kept(column, pad, before);
                    }
                }));
        Map<String, List<Double>> slopes = new LinkedHashMap<>();
        List<String> columns = all.taxelColumns();
        List<String> old = before.map(
                        d -> d.taxels().stream().map(Decoding.Cell::column).toList())
                .orElse(List.of());
        before.ifPresent(d -> d.slopes().forEach((pressed, row) -> {
            if (!now.containsKey(pressed) && columns.contains(pressed)) {
                slopes.put(pressed, spread(row, old, columns));
            }
        }));
        List<String> fresh = List.copyOf(now.keySet());
        Decoding.of(c).slopes().forEach((pressed, row) -> slopes.put(pressed, spread(row, fresh, columns)));
        slopes(columns, slopes);
        return out.toString();
    }

    private static List<Double> spread(List<Double> row, List<String> of, List<String> over) {
        List<Double> wide = new ArrayList<>();
        for (String column : over) {
            int at = of.indexOf(column);
            wide.add(at < 0 ? (Double) Double.NaN : row.get(at));
        }
        return wide;
    }

    private void kept(String column, String pad, Optional<Decoding> before) {
        Decoding.@Nullable Cell cell = before.flatMap(d -> d.taxels().stream()
                        .filter(t -> t.column().equals(column) && t.pad().equals(pad))
                        .findFirst())
                .orElse(null);
        out.append("  ").append(quoted(column)).append(":\n");
        line("pad", quoted(pad));
        if (cell == null) {
            line("not fitted", quoted("not calibrated yet"));
            return;
        }
        cell.log().ifPresent(log -> line("log", quoted(log)));
        if (cell.model().isEmpty()) {
            line("not fitted", quoted(cell.words()));
            return;
        }
        model(cell.model().get(), null);
    }

    private void taxel(Taxel t) {
        out.append("  ").append(quoted(t.column())).append(":\n");
        line("pad", quoted(t.pad()));
        if (t.model().isEmpty()) {
            line("not fitted", quoted(clipped(t.state().words() + ": " + t.words())));
            return;
        }
        model(t.model().get(), t);
    }

    /** @param of says the intervals; null if they are not known any more */
    private void model(TaxelModel m, @Nullable Taxel of) {
        line("zero", m.zero());
        withInterval(of, FigureKind.SENSITIVITY, "sensitivity", m.sensitivity());
        withInterval(of, FigureKind.QUADRATIC, "quadratic", m.quadratic());
        line("creep", m.creep());
        line("creep time", m.creepTime());
        line("play", m.play());
        if (m.temperature() != 0) {
            withInterval(of, FigureKind.TEMPERATURE, "temperature", m.temperature());
            line("at temperature", m.temperature0());
        }
        if (m.ambient() != 0) {
            withInterval(of, FigureKind.AMBIENT, "ambient", m.ambient());
            line("at ambient", m.ambient0());
        }
        withInterval(of, FigureKind.NOISE, "noise", m.noise());
        line("sensitivity error", m.sensitivityError());
        line("fitted to", m.top());
        if (!Double.isNaN(m.clip())) {
            line("clips at", m.clip());
        }
    }

    private void slopes(List<String> columns, Map<String, List<Double>> slopes) {
        if (slopes.isEmpty()) {
            return;
        }
        out.append("slopes:\n");
        for (String column : columns) {
            List<Double> row = slopes.get(column);
            if (row != null) {
                out.append("  ").append(quoted(column)).append(": [");
                out.append(String.join(
                        ", ",
                        row.stream()
                                .map(v -> Double.isNaN(v) ? "\"-\"" : QuantityText.number(v, 6))
                                .toList()));
                out.append("]\n");
            }
        }
    }

    private static String clipped(String text) {
        return text.length() <= 60 ? text : text.substring(0, 57) + "...";
    }

    private static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }

    private void line(String key, double value) {
        line(key, QuantityText.number(value, DIGITS));
    }

    private void line(String key, String value) {
        out.append("    ").append(key).append(": ").append(value).append('\n');
    }

    private void withInterval(@Nullable Taxel of, FigureKind kind, String key, double value) {
        var figure = of == null ? null : of.figures().get(kind);
        String interval = figure == null || !figure.known()
                ? ""
                : "  # 95 %: " + QuantityText.number(figure.interval().low(), 5) + " to "
                        + QuantityText.number(figure.interval().high(), 5);
        line(key, QuantityText.number(value, DIGITS) + interval);
    }
}
