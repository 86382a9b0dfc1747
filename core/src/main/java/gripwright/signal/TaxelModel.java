package gripwright.signal;

/**
 * What a taxel reads under a force f that changes with time:
 * {@code zero + sensitivity P + quadratic P^2 + creep C + temperature (T - T0) + ambient (A - A0)}, where P is f behind
 * a play of half width {@code play} and C is f behind a first-order filter.
 *
 * @param zero with the play in its middle [reading]
 * @param sensitivity [reading/N]
 * @param quadratic [reading/N^2]
 * @param creep [reading/N]; 0 if not known
 * @param creepTime [s]
 * @param play half the width of the dead band [N]
 * @param temperature [reading/K]; 0 if not known
 * @param ambient [reading/Pa]; 0 if not known
 * @param temperature0 reference temperature [degC]; NaN if there is none
 * @param ambient0 reference ambient pressure [Pa]; NaN if there is none
 * @param noise standard deviation of one reading
 * @param sensitivityError one standard deviation, relative
 * @param top greatest force it was fitted to [N]
 * @param clip reading at which it stops rising; NaN if it never did
 */
public record TaxelModel(
        double zero,
        double sensitivity,
        double quadratic,
        double creep,
        double creepTime,
        double play,
        double temperature,
        double ambient,
        double temperature0,
        double ambient0,
        double noise,
        double sensitivityError,
        double top,
        double clip) {
    /** Reading at rest after a load: the play is then at its upper end. */
    public double rest() {
        return zero + play * (sensitivity + quadratic * play);
    }

    /** The force behind the play that reads so much above {@link #zero} [N]; NaN beyond the top of a bent curve. */
    public double behindPlay(double above) {
        if (quadratic == 0) {
            return above / sensitivity;
        }
        double root = sensitivity * sensitivity + 4 * quadratic * above;
        return root < 0 ? Double.NaN : 2 * above / (sensitivity + Math.signum(sensitivity) * Math.sqrt(root));
    }
}
