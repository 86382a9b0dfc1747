package gripwright.signal;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Temperature per pad and ambient pressure over a log, and whether they change enough to tell their effect.
 *
 * @param temperature per pad, per bin, smoothed [degC]; without the pads that have no such column
 * @param cold per pad why its temperature coefficient cannot be told; without the pads where it can
 * @param temperature0 reference temperature [degC]; NaN if there is none
 * @param ambient per bin [Pa]; empty if there is none
 * @param noStep why the ambient coefficient cannot be told; empty if it can
 * @param ambient0 reference ambient pressure [Pa]; NaN if there is none
 */
record Surroundings(
        Map<String, double[]> temperature,
        Map<String, String> cold,
        double temperature0,
        double[] ambient,
        Optional<String> noStep,
        double ambient0) {
    private static final double LEAST_WARM_UP = 5;
    private static final double LEAST_VARIATION = 0.2;
    private static final double LEAST_STEP = 50;
    private static final double SLOW_TEMPERATURE = 4;

    static Surroundings of(CleanLog log, LoadCourse all) {
        Map<String, double[]> temperature = new LinkedHashMap<>();
        Map<String, String> cold = new LinkedHashMap<>();
        double reference = Double.NaN;
        for (SensorLog.Channel c : log.channels()) {
            if (temperature.containsKey(c.pad()) || c.temperature().length == 0) {
                continue;
            }
            double[] slow = slow(c.temperature(), log);
            temperature.put(c.pad(), slow);
            double[] sorted = IntStream.range(0, slow.length)
                    .filter(b -> all.force()[b] < LoadCourse.LOADED * all.top())
                    .mapToDouble(b -> slow[b])
                    .sorted()
                    .toArray();
            double range = sorted[sorted.length - 1 - sorted.length / 100] - sorted[sorted.length / 100];
            if (range < LEAST_WARM_UP) {
                cold.put(
                        c.pad(),
                        "the temperature changes by " + Words.number(range)
                                + " K without load; record while the pad warms by at least 5 K");
            }
            if (Double.isNaN(reference)) {
                reference = Math.rint(sorted[sorted.length / 2]);
            }
        }
        if (log.log().ambient().length == 0) {
            return new Surroundings(
                    temperature,
                    cold,
                    reference,
                    new double[0],
                    Optional.of(
                            "pads.yaml names no column of an open barometer (readings: ambient); lay one beside the pad"),
                    Double.NaN);
        }
        double[] raw = log.log().ambient().clone();
        Despike.clean(raw, CleanLog.leastStep(raw));
        double[] ambient = log.binned(raw);
        double jump = jump(ambient, log);
        Optional<String> noStep = jump >= LEAST_STEP
                ? Optional.empty()
                : Optional.of("the ambient pressure changes by at most " + Words.number(jump)
                        + " Pa within seconds; change it on purpose by at least 50 Pa (a closed jar or a syringe)");
        return new Surroundings(
                temperature, cold, reference, ambient, noStep, Math.rint(RobustWeights.median(ambient.clone())));
    }

    private static double[] slow(double[] temperature, CleanLog log) {
        double[] raw = temperature.clone();
        Despike.clean(raw, 0.01);
        int half = log.bins(SLOW_TEMPERATURE);
        return Resample.running(Resample.running(log.binned(raw), half), half / 2);
    }

    /** Greatest change between means of 5 s that lie 5 s apart. */
    private static double jump(double[] ambient, CleanLog log) {
        int half = log.bins(2.5);
        double[] mean = Resample.running(ambient, half);
        double jump = 0;
        for (int i = half; i + 5 * half < mean.length; i++) {
            jump = Math.max(jump, Math.abs(mean[i + 4 * half] - mean[i]));
        }
        return jump;
    }

    /** Temperature to fit a pad's taxels with; empty if it hardly changes or there is none. */
    double[] temperatureToFit(String pad) {
        double[] here = temperature.getOrDefault(pad, new double[0]);
        return here.length > 0 && CleanLog.range(here) > LEAST_VARIATION ? here : new double[0];
    }

    /** Ambient pressure to fit with; empty if it never changes or there is none. */
    double[] ambientToFit() {
        return ambient.length > 0 && CleanLog.range(ambient) > 0 ? ambient : new double[0];
    }

    /** Why a pad's temperature coefficient cannot be told; empty if it can. */
    Optional<String> lacksTemperature(String pad) {
        return temperature.containsKey(pad)
                ? Optional.ofNullable(cold.get(pad))
                : Optional.of("pads.yaml names no column of temperature (readings: temperature)");
    }
}
