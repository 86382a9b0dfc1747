package gripwright.report;

import gripwright.pad.Bus;
import gripwright.pad.ScanAnswer;

/** When the bus is busy and when each chip converts, for every scheme on one axis of time. */
public final class ScanPicture {
    private static final double LEFT = 190;
    private static final double RIGHT = 860;
    private static final double CHIP = 7;
    private static final int MOST_LINES = 16;

    private final ScanAnswer scan;
    private final Svg svg = new Svg();
    private final Scale x;

    private ScanPicture(ScanAnswer scan) {
        this.scan = scan;
        double most = scan.plans().stream()
                .filter(p -> p.possible() && p.scheme() != Bus.Scheme.ONE_BY_ONE)
                .mapToDouble(Bus.Plan::age)
                .max()
                .orElse(scan.plans().get(0).possible() ? scan.plans().get(0).period() : 1e-3);
        x = new Scale(0, 1e3 * most, LEFT, RIGHT);
    }

    public static Picture draw(ScanAnswer scan) {
        return new ScanPicture(scan).picture();
    }

    private Picture picture() {
        double y = 12;
        svg.text(0, y, "reading " + scan.chips() + " chips, one line each", "n");
        double key = LEFT + 130;
        svg.rect(key, y - 8, 26, 6, "bf").text(key + 34, y, "bus busy", "l");
        svg.line(key + 120, y - 5, key + 146, y - 5, "c2").text(key + 154, y, "chip converts", "l");
        svg.line(key + 270, y - 10, key + 270, y + 2, "t dash").text(key + 278, y, "all read: the scan ends", "l");
        y += 22;
        for (Bus.Plan plan : scan.plans()) {
            y = scheme(plan, y);
        }
        svg.line(LEFT, y, RIGHT, y, "t");
        for (double v : x.ticks(8)) {
            svg.line(x.at(v), y, x.at(v), y + 4, "t").text(x.at(v), y + 18, Num.text(v, 2), "l", Svg.Anchor.MIDDLE);
        }
        svg.text(RIGHT, y + 36, "time from the start of a scan, ms", "l", Svg.Anchor.END);
        return new Picture(
                "Reading " + scan.chips() + " chips: bus and conversions over time by scheme", 900, y + 44, svg.body());
    }

    private double scheme(Bus.Plan plan, double top) {
        svg.text(0, top + 12, plan.scheme().label(), "v b");
        if (!plan.possible()) {
            svg.text(LEFT, top + 12, "not possible", "l");
            return top + 34;
        }
        svg.text(0, top + 28, Num.unit(Num.digits(1e3 * plan.period(), 3), "ms") + " a scan", "l");
        Bus bus = scan.bus();
        double s = bus.select() + bus.start(scan.chip());
        double r = bus.select() + bus.read(scan.chip());
        double tc = scan.chip().ready();
        int n = scan.chips();
        int lines = Math.min(n, MOST_LINES);
        if (plan.scheme() == Bus.Scheme.ONE_BY_ONE) {
            lines = Math.min(lines, (int) Math.ceil(x.high() / (1e3 * plan.period() / n)));
        }
        for (int i = 0; i < lines; i++) {
            double y = top + 4 + i * CHIP;
            switch (plan.scheme()) {
                case ONE_BY_ONE -> {
                    double at = i * plan.period() / n;
                    busy(at, s, y).converts(at + s, tc, y).busy(at + s + tc, plan.period() / n - s - tc, y);
                }
                case START_ALL -> {
                    double reads = Math.max(n * s, s + tc);
                    busy(i * s, s, y).converts((i + 1) * s, tc, y).busy(reads + i * r, r, y);
                }
                case BROADCAST -> busy(0, s, y).converts(s, tc, y).busy(s + tc + i * r, r, y);
                case RING -> {
                    double slot = bus.select() + bus.read(scan.chip()) + bus.start(scan.chip());
                    busy(i * slot, slot, y).converts((i + 1) * slot, tc, y);
                }
            }
        }
        double bottom = top + 8 + lines * CHIP;
        if (1e3 * plan.period() <= x.high()) {
            svg.line(x.at(1e3 * plan.period()), top, x.at(1e3 * plan.period()), bottom, "t dash");
        } else {
            svg.text(
                    RIGHT,
                    bottom + 12,
                    "goes on to " + Num.unit(Num.digits(1e3 * plan.period(), 3), "ms"),
                    "l",
                    Svg.Anchor.END);
        }
        if (n > MOST_LINES) {
            svg.text(0, top + 44, "first " + lines + " of " + n + " shown", "lq");
        }
        return Math.max(bottom, top + 50) + 14;
    }

    private ScanPicture busy(double from, double length, double y) {
        double start = x.at(1e3 * from);
        if (start < RIGHT) {
            double width = Math.min(RIGHT - start, Math.max(0.8, x.at(1e3 * length) - LEFT));
            svg.rect(start, y, width, CHIP - 2, "bf");
        }
        return this;
    }

    private ScanPicture converts(double from, double length, double y) {
        double end = Math.min(x.high(), 1e3 * (from + length));
        if (1e3 * from >= x.high()) {
            return this;
        }
        svg.line(x.at(1e3 * from), y + (CHIP - 2) / 2, x.at(end), y + (CHIP - 2) / 2, "c2");
        return this;
    }
}
