package gripwright.report;

import gripwright.signal.Decoder;
import gripwright.signal.ForceCourse;
import java.util.ArrayList;
import java.util.List;

/** Decoded forces over time: per pad the total force, when it was touched, where slip is suspected, and the centre. */
public final class DecodePicture {
    private static final double WIDTH = 900;
    private static final double LEFT = 74;
    private static final double RIGHT = 860;
    private static final double HIGH = 110;
    private static final double PAD = 312;

    private DecodePicture() {}

    /**
     * @param pads in the order of the courses
     * @param events of all pads, in order of time
     */
    public static Picture of(List<Decoder.PadPlace> pads, List<ForceCourse> courses, List<Decoder.Event> events) {
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        double most = 0;
        for (ForceCourse course : courses) {
            for (ForceCourse.Stretch s : course.stretches()) {
                from = Math.min(from, s.time());
                to = Math.max(to, s.time());
                most = Math.max(most, s.high());
            }
        }
        Svg svg = new Svg();
        if (!(to > from)) {
            svg.text(LEFT, 30, "no rows of forces", "l");
            return new Picture("Decoded forces", WIDTH, 50, svg.body());
        }
        Scale time = new Scale(from, to, LEFT, RIGHT);
        for (int p = 0; p < pads.size(); p++) {
            String name = pads.get(p).name();
            List<Decoder.Event> own =
                    events.stream().filter(e -> e.pad().equals(name)).toList();
            force(svg, pads.get(p), courses.get(p), own, time, Math.max(most, 1e-3), p * PAD);
            centre(svg, pads.get(p), courses.get(p), time, p * PAD + 178);
        }
        double end = pads.size() * PAD + 4;
        svg.line(LEFT, end, LEFT + 34, end, "force").text(LEFT + 42, end + 4, "touched", "l");
        svg.circle(LEFT + 135, end, 3.2, "forcedot").text(LEFT + 146, end + 4, "slip suspected", "l");
        return new Picture("Decoded forces over time, pad by pad", WIDTH, end + 16, svg.body());
    }

    private static void force(
            Svg svg,
            Decoder.PadPlace pad,
            ForceCourse course,
            List<Decoder.Event> events,
            Scale time,
            double most,
            double top) {
        Scale y = new Scale(0, 1.05 * most, top + 34 + HIGH, top + 34);
        svg.text(LEFT, top + 14, pad.name() + ": total force, N", "n");
        for (double v : y.ticks(4)) {
            svg.line(LEFT, y.at(v), RIGHT, y.at(v), v == 0 ? "t" : "gl");
            svg.text(LEFT - 6, y.at(v) + 4, Num.digits(v, 3), "l", Svg.Anchor.END);
        }
        List<Svg.P> trace = new ArrayList<>();
        for (ForceCourse.Stretch s : course.stretches()) {
            if (!Double.isNaN(s.high())) {
                trace.add(new Svg.P(time.at(s.time()), y.at(Math.max(s.low(), -0.1 * most))));
                trace.add(new Svg.P(time.at(s.time()), y.at(Math.max(s.high(), -0.1 * most))));
            }
        }
        svg.polyline(trace, "c1");
        double under = y.at(0) + 12;
        double since = Double.NaN;
        for (Decoder.Event e : events) {
            switch (e.kind()) {
                case TOUCH -> since = e.time();
                case RELEASE -> {
                    svg.line(time.at(since), under, Math.max(time.at(e.time()), time.at(since) + 1), under, "force");
                    since = Double.NaN;
                }
                case SLIP -> svg.circle(time.at(e.time()), under, 3.2, "forcedot");
            }
        }
        if (!Double.isNaN(since)) {
            svg.line(time.at(since), under, RIGHT, under, "force");
        }
    }

    private static void centre(Svg svg, Decoder.PadPlace pad, ForceCourse course, Scale time, double top) {
        double half = 0;
        for (double along : pad.along()) {
            half = Math.max(half, 1e3 * Math.abs(along));
        }
        half = Math.max(half + 500 * pad.pitch(), 1);
        Scale y = new Scale(-half, half, top + 24 + 0.7 * HIGH, top + 24);
        svg.text(
                LEFT,
                top + 10,
                "centre of force along the pad, mm from its middle, where the force is clear of the noise",
                "n");
        for (double v : y.ticks(4)) {
            svg.line(LEFT, y.at(v), RIGHT, y.at(v), v == 0 ? "t" : "gl");
            svg.text(LEFT - 6, y.at(v) + 4, Num.text(v, 0), "l", Svg.Anchor.END);
        }
        List<Svg.P> piece = new ArrayList<>();
        for (ForceCourse.Stretch s : course.stretches()) {
            if (Double.isNaN(s.centre())) {
                piece = drawn(svg, piece);
            } else {
                piece.add(new Svg.P(time.at(s.time()), y.at(Math.max(-half, Math.min(half, 1e3 * s.centre())))));
            }
        }
        drawn(svg, piece);
        double under = top + 24 + 0.7 * HIGH;
        for (double v : time.ticks(8)) {
            svg.text(time.at(v), under + 16, Num.digits(v, 4), "l", Svg.Anchor.MIDDLE);
        }
        svg.text(RIGHT, under + 30, "time, s", "l", Svg.Anchor.END);
    }

    private static List<Svg.P> drawn(Svg svg, List<Svg.P> piece) {
        if (piece.size() > 1) {
            svg.polyline(piece, "c1");
        } else if (piece.size() == 1) {
            svg.line(
                    piece.get(0).x() - 0.5,
                    piece.get(0).y(),
                    piece.get(0).x() + 0.5,
                    piece.get(0).y(),
                    "c1");
        }
        return new ArrayList<>();
    }
}
