package gripwright.signal;

/**
 * Play: what follows a force only once it has moved by more than a dead band, as a pin in a slot does. The simplest
 * hysteresis that does not depend on speed.
 */
final class Play {
    private Play() {}

    /**
     * The force as it arrives behind the play, in the middle of the slot at the start.
     *
     * @param force [N], shape n
     * @param half half the width of the slot [N]
     */
    static double[] of(double[] force, double half) {
        double[] out = new double[force.length];
        double at = force.length > 0 ? force[0] : 0;
        for (int i = 0; i < out.length; i++) {
            at = Math.min(Math.max(at, force[i] - half), force[i] + half);
            out[i] = at;
        }
        return out;
    }
}
