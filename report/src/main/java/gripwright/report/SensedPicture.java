package gripwright.report;

import gripwright.closing.ChipReadings;
import gripwright.closing.ChipReadings.Chip;
import gripwright.closing.ChipReadings.Value;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What the chips read over the time of a closing: one panel per strip, the alarm and the end of the range drawn. */
public final class SensedPicture {
    private static final double LEFT = 56;
    private static final double LABELS = 150;
    private static final double HEIGHT = 120;
    private static final double LINE = 13;
    private static final String[] STYLES = {"c0", "c1", "c2", "c3", "c4"};

    private final Svg svg = new Svg();
    private final ChipReadings readings;
    private final Scale x;

    private SensedPicture(ChipReadings readings, double width) {
        this.readings = readings;
        double end = Math.max(1e-3, readings.end() + readings.period());
        x = new Scale(0, end, LEFT, width - LABELS);
    }

    /** The panels alone. */
    public static Picture draw(ChipReadings readings, double width) {
        SensedPicture p = new SensedPicture(readings, width);
        double end = p.panels(0);
        return new Picture("What the chips read while the hand closed", width, end, p.svg.body());
    }

    /** A picture with the panels under it. */
    public static Picture under(Picture above, ChipReadings readings) {
        SensedPicture p = new SensedPicture(readings, above.width());
        double end = p.panels(above.height() + 24);
        return new Picture(above.title(), above.width(), end, above.body() + p.svg.body());
    }

    private double panels(double top) {
        Map<String, List<Chip>> strips = new LinkedHashMap<>();
        for (Chip chip : readings.chips()) {
            strips.computeIfAbsent(chip.strip(), k -> new ArrayList<>()).add(chip);
        }
        double y = top;
        svg.text(0, y + 12, "What the chips read over their zero, policy " + readings.policy(), "n");
        y = stops(y + 30);
        double first = y;
        for (Map.Entry<String, List<Chip>> strip : strips.entrySet()) {
            y = panel(strip.getKey(), strip.getValue(), y);
        }
        for (ChipReadings.Stop s : readings.stops()) {
            svg.line(x.at(s.stopped()), first - 12, x.at(s.stopped()), y - 26, "t dash");
        }
        for (double v : x.ticks(6)) {
            svg.text(x.at(v), y - 8, Num.text(v, 2), "l", Svg.Anchor.MIDDLE);
        }
        svg.text(x.to(), y + 8, "time since the winches started, s", "l", Svg.Anchor.END);
        return y + 16;
    }

    /** Names of what stopped when, each on a line of its own where they would collide. */
    private double stops(double top) {
        double y = top;
        double end = -1;
        for (ChipReadings.Stop s : readings.stops()) {
            String words = s.what() + " stops: " + name(s.chip());
            double at = Math.min(x.at(s.stopped()), x.to() + LABELS - Svg.textWidth(words, 12));
            if (at < end) {
                y += LINE + 1;
            }
            svg.text(at, y, words, "l halo");
            end = at + Svg.textWidth(words, 12) + 8;
        }
        return y + 18;
    }

    private String name(int chip) {
        Chip c = readings.chips().get(chip);
        return c.strip() + " " + (c.index() + 1);
    }

    private double panel(String strip, List<Chip> chips, double top) {
        double threshold = chips.get(0).threshold();
        double most = 1.5 * threshold;
        double least = -threshold;
        for (Chip c : chips) {
            for (Value v : c.values()) {
                most = Math.max(most, v.pressure() - c.zero());
                least = Math.min(least, v.pressure() - c.zero());
            }
        }
        Scale y = new Scale(1e-3 * least, 1e-3 * most, top + HEIGHT, top + 16);
        svg.text(LEFT, top + 6, strip + ", on " + chips.get(0).body() + ", kPa", "n");
        for (double v : y.ticks(3)) {
            svg.line(x.from(), y.at(v), x.to(), y.at(v), "gl");
            svg.text(x.from() - 6, y.at(v) + 4, Num.text(v, 3), "l", Svg.Anchor.END);
        }
        svg.line(x.from(), y.from(), x.to(), y.from(), "t");
        for (double v : x.ticks(6)) {
            svg.line(x.at(v), y.from(), x.at(v), y.from() + 4, "t");
        }
        List<Chip> loud = chips.stream()
                .filter(c -> SensedPicture.most(c) > c.threshold())
                .toList();
        for (Chip c : chips) {
            int index = loud.indexOf(c);
            curve(c, index < 0 ? "gl" : STYLES[index % STYLES.length], y);
        }
        double alarm = y.at(1e-3 * threshold);
        svg.line(x.from(), alarm, x.to(), alarm, "aim");
        labels(loud, alarm, y);
        return top + HEIGHT + 32;
    }

    private static double most(Chip c) {
        return c.values().stream()
                .mapToDouble(v -> v.pressure() - c.zero())
                .max()
                .orElse(0);
    }

    private void curve(Chip c, String style, Scale y) {
        List<Svg.P> points = new ArrayList<>();
        List<Svg.P> full = new ArrayList<>();
        for (Value v : c.values()) {
            Svg.P p = new Svg.P(x.at(v.sampled()), y.at(1e-3 * (v.pressure() - c.zero())));
            points.add(p);
            if (v.saturated()) {
                full.add(p);
            }
        }
        if (points.size() > 1) {
            svg.polyline(points, style);
        }
        for (Svg.P p : full) {
            svg.line(p.x(), p.y() - 4, p.x(), p.y() + 4, "t");
        }
    }

    /** Names at the right end, moved apart; the alarm's among them. */
    private void labels(List<Chip> loud, double alarm, Scale y) {
        record Label(String words, double at, String style) {}
        List<Label> labels = new ArrayList<>();
        labels.add(new Label("alarm", alarm, "lq"));
        for (Chip c : loud) {
            Value last = c.values().get(c.values().size() - 1);
            boolean full = c.values().stream().anyMatch(Value::saturated);
            labels.add(new Label(
                    "chip " + (c.index() + 1) + (full ? ", end of range" : ""),
                    y.at(1e-3 * (last.pressure() - c.zero())),
                    "l"));
        }
        labels.sort(Comparator.comparingDouble(Label::at));
        double room = y.from() - y.to() + 30;
        double step = Math.min(LINE, room / labels.size());
        double next = y.to() - 8;
        for (int i = 0; i < labels.size(); i++) {
            double left = (labels.size() - 1 - i) * step;
            double at = Math.max(next, Math.min(labels.get(i).at() + 4, y.from() + 22 - left));
            svg.text(x.to() + 8, at, labels.get(i).words(), labels.get(i).style());
            next = at + step;
        }
    }
}
