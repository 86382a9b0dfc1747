package gripwright.signal;

/** Creep: what follows a force as a first-order filter does, at rest at the start. */
final class Creep {
    private Creep() {}

    /**
     * @param time [s], rising, shape n
     * @param force [N], held from each time to the next as their mean
     * @param constant time constant [s]
     */
    static double[] of(double[] time, double[] force, double constant) {
        double[] out = new double[force.length];
        double at = 0;
        double lastStep = Double.NaN;
        double share = 0;
        for (int i = 1; i < out.length; i++) {
            double step = time[i] - time[i - 1];
            if (step != lastStep) {
                share = -Math.expm1(-step / constant);
                lastStep = step;
            }
            at += share * (0.5 * (force[i] + force[i - 1]) - at);
            out[i] = at;
        }
        return out;
    }
}
