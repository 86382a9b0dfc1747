package gripwright.files;

import gripwright.signal.OwnClock;
import gripwright.units.QuantityText;
import java.util.Arrays;
import java.util.Optional;

/**
 * Collects the readings of a load cell by its own clock from rows they were merged into: rows may repeat one until the
 * next comes, or hold none.
 */
final class MergedReference {
    private double[][] kept = new double[3][0];
    private int count;
    private double stamp = Double.NEGATIVE_INFINITY;
    private double force = Double.NaN;
    private long unstamped;

    /**
     * The next row.
     *
     * @param beside device's time of it [s]; minus infinity before the first
     * @param at stamp of the load cell's clock [s], NaN if missing
     * @param value [N], NaN if missing
     * @return what is wrong with the stamp; empty if nothing is
     */
    Optional<String> take(double beside, double at, double value) {
        if (Double.isNaN(at) || Double.isNaN(value)) {
            unstamped += Double.isNaN(value) ? 0 : 1;
            return Optional.empty();
        }
        if (at < stamp) {
            return Optional.of("goes back from " + number(stamp) + " s to " + number(at) + " s");
        }
        if (at == stamp) {
            return value == force
                    ? Optional.empty()
                    : Optional.of("stays at " + number(at) + " s while the force goes from " + number(force) + " N to "
                            + number(value) + " N");
        }
        if (beside == Double.NEGATIVE_INFINITY) {
            return Optional.empty();
        }
        if (count == kept[0].length) {
            for (int k = 0; k < kept.length; k++) {
                kept[k] = Arrays.copyOf(kept[k], Math.max(4096, count + count / 2));
            }
        }
        kept[0][count] = at;
        kept[1][count] = beside;
        kept[2][count++] = value;
        stamp = at;
        force = value;
        return Optional.empty();
    }

    private static String number(double value) {
        return QuantityText.number(value, 15);
    }

    Optional<String> remark() {
        return unstamped == 0
                ? Optional.empty()
                : Optional.of(unstamped + " readings of the reference have no stamp of its own clock; left out");
    }

    /** @throws IllegalArgumentException if there are too few */
    OwnClock all() {
        return new OwnClock(
                Arrays.copyOf(kept[0], count), Arrays.copyOf(kept[1], count), Arrays.copyOf(kept[2], count));
    }
}
