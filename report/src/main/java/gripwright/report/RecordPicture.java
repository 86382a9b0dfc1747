package gripwright.report;

import gripwright.files.Recording;
import java.util.ArrayList;
import java.util.List;

/** A recording: rate and lost readings over time, and under it each taxel's trace on a scale of its own. */
public final class RecordPicture {
    private static final double LEFT = 150;
    private static final double WIDTH = 600;
    private static final double RATE = 90;
    private static final double ROW = 26;
    private static final double PAUSE = 2; // a longer one shows as a gap in the traces [s]
    private static final double RIGHT = LEFT + WIDTH;

    private RecordPicture() {}

    public static Picture draw(Recording recording) {
        Svg svg = new Svg();
        double seconds =
                Math.max(1e-9, recording.stripSeconds() * recording.strips().size());
        Scale time = new Scale(0, seconds, LEFT, RIGHT);
        svg.text(0, 12, "readings a second", "n");
        double y = rates(svg, recording, time, 26);
        y = losses(svg, recording, time, y + 18);
        svg.text(0, y + 30, "taxels, each from its lowest to its highest value", "n");
        y += 44;
        for (Recording.Taxel taxel : recording.taxels()) {
            taxel(svg, recording, taxel, time, y);
            y += ROW;
        }
        axis(svg, time, y + 4);
        svg.text(RIGHT, y + 38, "seconds since the start", "l", Svg.Anchor.END);
        return new Picture("What came from " + recording.source(), 900, y + 48, svg.body());
    }

    private static void axis(Svg svg, Scale time, double y) {
        svg.line(LEFT, y, RIGHT, y, "t");
        for (double v : time.ticks(6)) {
            svg.line(time.at(v), y, time.at(v), y + 4, "t")
                    .text(time.at(v), y + 18, Num.text(v, 2), "l", Svg.Anchor.MIDDLE);
        }
    }

    private static double rates(Svg svg, Recording recording, Scale time, double top) {
        List<Svg.P> steps = steps(recording);
        double most = steps.stream().mapToDouble(Svg.P::y).max().orElse(1);
        Scale rate = new Scale(0, Math.max(1e-9, 1.05 * most), top + RATE, top);
        for (double v : rate.ticks(3)) {
            svg.line(LEFT, rate.at(v), RIGHT, rate.at(v), "gl")
                    .text(LEFT - 8, rate.at(v) + 4, Num.text(v, 2), "l", Svg.Anchor.END);
        }
        if (!steps.isEmpty()) {
            svg.polyline(
                    steps.stream()
                            .map(p -> new Svg.P(time.at(p.x()), rate.at(p.y())))
                            .toList(),
                    "c1");
        }
        axis(svg, time, top + RATE);
        return top + RATE + 18;
    }

    /** Readings a second over time, over a second or more at a time: single strips of a slow source hold one or none. */
    private static List<Svg.P> steps(Recording recording) {
        double width = recording.stripSeconds();
        int joined = Math.max(1, (int) Math.ceil(1 / width - 1e-9));
        List<Svg.P> steps = new ArrayList<>();
        List<Recording.Strip> strips = recording.strips();
        for (int i = 0; i < strips.size(); i += joined) {
            List<Recording.Strip> some = strips.subList(i, Math.min(strips.size(), i + joined));
            double rate = some.stream().mapToLong(Recording.Strip::readings).sum() / (some.size() * width);
            steps.add(new Svg.P(i * width, rate));
            steps.add(new Svg.P((i + some.size()) * width, rate));
        }
        return steps;
    }

    /** Two rows of ticks: where readings are missing, and where lines were no readings. */
    private static double losses(Svg svg, Recording recording, Scale time, double top) {
        double y = top;
        for (boolean missing : new boolean[] {true, false}) {
            long all =
                    missing ? recording.counts().missing() : recording.counts().malformed();
            svg.text(LEFT - 8, y + 12, missing ? "missing" : "malformed", "l", Svg.Anchor.END)
                    .line(LEFT, y + 14, RIGHT, y + 14, "gl")
                    .text(
                            RIGHT + 10,
                            y + 12,
                            all == 0 ? "none" : all + (missing ? " reading" : " line") + (all == 1 ? "" : "s"),
                            "l");
            for (int i = 0; i < recording.strips().size(); i++) {
                Recording.Strip strip = recording.strips().get(i);
                if ((missing ? strip.missing() : strip.malformed()) > 0) {
                    double x = time.at((i + 0.5) * recording.stripSeconds());
                    svg.line(x, y + 2, x, y + 14, "k2");
                }
            }
            y += 22;
        }
        return y;
    }

    private static void taxel(Svg svg, Recording recording, Recording.Taxel taxel, Scale time, double top) {
        String pad = taxel.pad().isEmpty() ? "" : taxel.pad() + " ";
        svg.text(LEFT - 8, top + 17, pad + taxel.column(), "l", Svg.Anchor.END);
        svg.line(LEFT, top + ROW - 2, RIGHT, top + ROW - 2, "gl");
        double span = taxel.greatest() - taxel.least();
        Scale value = new Scale(taxel.least(), span > 0 ? taxel.greatest() : taxel.least() + 1, top + ROW - 4, top + 3);
        StringBuilder path = new StringBuilder();
        List<Svg.P> run = new ArrayList<>();
        int empty = 0;
        for (int i = 0; i < taxel.low().size(); i++) {
            if (!Float.isNaN(taxel.low().get(i))) {
                empty = 0;
                double x = time.at((i + 0.5) * recording.stripSeconds());
                boolean up = i % 2 == 0; // to and fro, else every strip would be crossed by a slant of its own
                run.add(new Svg.P(x, value.at((up ? taxel.low() : taxel.high()).get(i))));
                run.add(new Svg.P(x, value.at((up ? taxel.high() : taxel.low()).get(i))));
            } else if (++empty * recording.stripSeconds() > PAUSE && !run.isEmpty()) {
                path.append(Svg.data(run));
                run.clear();
            }
        }
        if (!run.isEmpty()) {
            path.append(Svg.data(run));
        }
        if (path.length() > 0) {
            svg.path(path.toString(), "t");
        }
        svg.text(RIGHT + 10, top + 17, words(taxel, span), taxel.stuck() || taxel.saturated() > 0 ? "l b" : "l");
    }

    private static String words(Recording.Taxel taxel, double span) {
        if (taxel.values() == 0) {
            return "no value";
        }
        String range = span > 0
                ? Num.digits(taxel.least(), 5) + " to " + Num.digits(taxel.greatest(), 5)
                : Num.digits(taxel.least(), 5);
        return range + (taxel.stuck() ? ", stuck" : "") + (taxel.saturated() > 0 ? ", saturated" : "");
    }
}
