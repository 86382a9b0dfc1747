package gripwright.report;

import java.util.ArrayList;
import java.util.List;

/** A linear axis from a value range to picture units. */
record Scale(double low, double high, double from, double to) {
    double at(double value) {
        return from + (value - low) / (high - low) * (to - from);
    }

    /** Round values, at most about so many. */
    List<Double> ticks(int most) {
        double step = Num.nice((high - low) / most);
        List<Double> out = new ArrayList<>();
        for (double v = Math.ceil(low / step - 1e-9) * step; v <= high + 1e-9 * step; v += step) {
            out.add(v);
        }
        return out;
    }
}
