package gripwright.crosscheck;

import gripwright.closing.Convergence.Point;
import java.util.List;
import java.util.Locale;

/** Error against size on logarithmic axes, a panel for each study, as one small SVG that reads in light and dark. */
final class LogPlot {
    private static final int WIDTH = 250;
    private static final int HEIGHT = 210;
    private static final int LEFT = 48;
    private static final int TOP = 34;
    private static final int BOTTOM = 40;

    /** One line of points with its name. */
    record Line(String name, List<Point> points) {}

    /** One pair of axes. */
    record Panel(String title, String across, String up, List<Line> lines) {}

    private static final String[] DASHES = {"", "5 3", "1 3"};

    private final StringBuilder out = new StringBuilder();

    private LogPlot() {}

    static String svg(List<Panel> panels) {
        LogPlot plot = new LogPlot();
        int width = panels.size() * WIDTH;
        plot.out
                .append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + width + " " + HEIGHT)
                .append(
                        "\" font-family=\"sans-serif\" font-size=\"10\">\n<style>text{fill:#222}path,circle{stroke:#222;"
                                + "fill:none}.grid{stroke:#bbb;stroke-width:.5}.p{fill:#222}rect{fill:#fff}"
                                + "@media(prefers-color-scheme:dark){text{fill:#ddd}path,circle{stroke:#ddd}.p{fill:#ddd}"
                                + ".grid{stroke:#555}rect{fill:#181818}}</style>\n")
                .append("<rect width=\"" + width + "\" height=\"" + HEIGHT + "\"/>\n");
        for (int i = 0; i < panels.size(); i++) {
            plot.panel(panels.get(i), i * WIDTH);
        }
        return plot.out.append("</svg>\n").toString();
    }

    /** Slope of the line of least squares through the logarithms; errors of 0 left out. */
    static double order(List<Point> points) {
        List<Point> seen = points.stream().filter(p -> p.error() > 0).toList();
        double mx = seen.stream().mapToDouble(p -> Math.log(p.size())).average().orElse(0);
        double my =
                seen.stream().mapToDouble(p -> Math.log(p.error())).average().orElse(0);
        double xy = 0;
        double xx = 0;
        for (Point p : seen) {
            xy += (Math.log(p.size()) - mx) * (Math.log(p.error()) - my);
            xx += (Math.log(p.size()) - mx) * (Math.log(p.size()) - mx);
        }
        return xy / xx;
    }

    private void panel(Panel panel, int x0) {
        double[] x = range(panel, true);
        double[] y = range(panel, false);
        text(x0 + WIDTH / 2, 14, "middle", panel.title);
        text(x0 + WIDTH / 2, HEIGHT - 6, "middle", panel.across);
        text(x0 + 6, TOP - 8, "start", panel.up);
        for (int d = (int) Math.ceil(x[0]); d <= x[1]; d++) {
            double at = x0 + across(d, x);
            path("grid", "M" + number(at) + " " + TOP + "V" + (HEIGHT - BOTTOM), "");
            text(at, HEIGHT - BOTTOM + 12, "middle", "1e" + d);
        }
        for (int d = (int) Math.ceil(y[0]); d <= y[1]; d++) {
            path("grid", "M" + (x0 + LEFT) + " " + number(up(d, y)) + "H" + (x0 + WIDTH - 10), "");
            text(x0 + LEFT - 4, up(d, y) + 3, "end", "1e" + d);
        }
        for (int i = 0; i < panel.lines.size(); i++) {
            Line line = panel.lines.get(i);
            StringBuilder data = new StringBuilder();
            for (Point p : line.points) {
                if (p.error() > 0) {
                    double px = x0 + across(Math.log10(p.size()), x);
                    double py = up(Math.log10(p.error()), y);
                    data.append(data.isEmpty() ? "M" : "L")
                            .append(number(px))
                            .append(' ')
                            .append(number(py));
                    out.append("<circle class=\"p\" cx=\"" + number(px) + "\" cy=\"" + number(py) + "\" r=\"2\"/>\n");
                }
            }
            path("", data.toString(), DASHES[i % DASHES.length]);
            String order = String.format(Locale.ROOT, "order %.1f", order(line.points));
            text(
                    x0 + WIDTH - 12,
                    HEIGHT - BOTTOM - 6 - 12 * (panel.lines.size() - 1 - i),
                    "end",
                    line.name.isEmpty() ? order : line.name + ": " + order);
        }
    }

    private static double[] range(Panel panel, boolean across) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Line line : panel.lines) {
            for (Point p : line.points) {
                double v = across ? p.size() : p.error();
                if (v > 0) {
                    low = Math.min(low, Math.log10(v));
                    high = Math.max(high, Math.log10(v));
                }
            }
        }
        return new double[] {low - 0.15, Math.max(high, low + 0.5) + 0.15};
    }

    private static double across(double log, double[] x) {
        return LEFT + (WIDTH - 10 - LEFT) * (log - x[0]) / (x[1] - x[0]);
    }

    private static double up(double log, double[] y) {
        return HEIGHT - BOTTOM - (HEIGHT - BOTTOM - TOP) * (log - y[0]) / (y[1] - y[0]);
    }

    private void path(String cls, String data, String dash) {
        out.append("<path class=\"" + cls + "\" d=\"" + data + "\"");
        out.append(dash.isEmpty() ? "/>\n" : " stroke-dasharray=\"" + dash + "\"/>\n");
    }

    private void text(double x, double y, String anchor, String text) {
        out.append("<text x=\"" + number(x) + "\" y=\"" + number(y) + "\" text-anchor=\"" + anchor + "\">" + text
                + "</text>\n");
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
