package gripwright.pad;

import java.util.ArrayList;
import java.util.List;

/**
 * What the mean of several readings buys: noise falls with the root of their number, the zero's own noise stays, and drift
 * goes on while one waits.
 *
 * @param readings averaged
 * @param time they take [s]
 * @param noise smallest force told from none by noise alone [N]
 * @param drift force that drift fakes meanwhile, at most [N]
 */
public record Averaging(int readings, double time, double noise, double drift) {
    private static final int[] NUMBERS = {1, 4, 16, 64, 256, 1024};
    private static final int MOST = 1 << 16;

    /** One chip read as fast as it converts, a load straight over it; readings are taken as independent. */
    public static Averaging of(int readings, PadDesign pad, double sensitivity, Drift drift, PadSetup.Judging j) {
        double time = readings * pad.chip().ready();
        double deviations = Detection.quantile(j.falseAlarm()) + Detection.quantile(j.miss());
        double noise = deviations * pad.chip().noise() * Math.sqrt(1.0 / readings + 1.0 / j.zeros()) / sensitivity;
        return new Averaging(readings, time, noise, drift.rate() * time / sensitivity);
    }

    static List<Averaging> table(PadDesign pad, double sensitivity, Drift drift, PadSetup.Judging j) {
        List<Averaging> out = new ArrayList<>();
        for (int n : NUMBERS) {
            out.add(of(n, pad, sensitivity, drift, j));
        }
        return out;
    }

    /** The number at which noise and the greatest drift together are least. */
    static Averaging best(PadDesign pad, double sensitivity, Drift drift, PadSetup.Judging j) {
        Averaging best = of(1, pad, sensitivity, drift, j);
        for (int n = 2; n <= MOST; n++) {
            Averaging next = of(n, pad, sensitivity, drift, j);
            if (next.together() >= best.together()) {
                return best;
            }
            best = next;
        }
        return best;
    }

    public double together() {
        return noise + drift;
    }
}
