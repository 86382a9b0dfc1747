package gripwright.signal;

import gripwright.check.Check;
import java.util.List;
import java.util.Optional;

/**
 * Readings of taxels beside a reference force. Arrays are shared, not copied: a log may be large.
 *
 * @param unit of the taxels: Pa or counts
 * @param time of the device's clock [s], rising, shape n
 * @param force of the reference [N], NaN where missing, shape n; empty if it has a clock of its own
 * @param ambient of an open barometer [Pa], shape n, or empty
 * @param pressed number of the taxel pressed, 0 for a plate on all, shape n, or empty for a plate all the time
 * @param channels one per taxel
 * @param own the reference, if it has a clock of its own
 */
public record SensorLog(
        String unit,
        double[] time,
        double[] force,
        double[] ambient,
        double[] pressed,
        List<Channel> channels,
        Optional<OwnClock> own) {
    /**
     * One taxel.
     *
     * @param column its name in the log
     * @param pad its pad
     * @param number counted from 1 over all taxels
     * @param readings NaN where missing, shape n
     * @param temperature [degC], shape n, or empty
     */
    public record Channel(String column, String pad, int number, double[] readings, double[] temperature) {}

    public SensorLog {
        channels = List.copyOf(channels);
        int n = time.length;
        if (own.isEmpty()) {
            Check.count(force.length, n, "the force", "one per time");
        }
        Check.that(ambient.length == 0 || ambient.length == n, "ambient has " + ambient.length + " values of " + n);
        Check.that(pressed.length == 0 || pressed.length == n, "pressed has " + pressed.length + " values of " + n);
        for (Channel c : channels) {
            Check.count(c.readings().length, n, "taxel " + c.column(), "one per time");
        }
    }

    /** A log whose reference was taken by the device itself. */
    public SensorLog(
            String unit, double[] time, double[] force, double[] ambient, double[] pressed, List<Channel> channels) {
        this(unit, time, force, ambient, pressed, channels, Optional.empty());
    }

    int rows() {
        return time.length;
    }

    /** Place of the taxel with that number; -1 if there is none. */
    int position(int number) {
        for (int c = 0; c < channels.size(); c++) {
            if (channels.get(c).number() == number) {
                return c;
            }
        }
        return -1;
    }
}
