package gripwright.signal;

import gripwright.stats.Interval;
import java.util.List;
import java.util.Optional;

/**
 * What a calibration log says about the pads.
 *
 * @param unit of the readings: Pa or counts
 * @param plate whether all taxels were pressed at once; else each was pressed alone
 * @param rates at which detection limits are stated
 * @param rows of the log
 * @param step usual time between rows [s]
 * @param gaps places where rows are missing
 * @param top greatest force [N]
 * @param cycles counted cycles, and {@code practice} cycles before them that were not counted
 * @param cycleTime mean length of a counted cycle [s]; NaN without any
 * @param ownClock whether the reference has a clock of its own
 * @param lag by how much the reference is written late at the log's start, or its own clock shows more than the device's [s]
 * @param skew by how much the reference's clock is fast [-]
 * @param temperature0 reference temperature [degC]; NaN if there is none
 * @param ambient0 reference ambient pressure [Pa]; NaN if there is none
 * @param taxels in the order of the log
 * @param crossTalk of pressed taxels; empty if refused
 * @param crossTalkRefusal why there is no cross-talk, and what to record
 * @param notes on the log as a whole
 */
public record Calibration(
        String unit,
        boolean plate,
        Rates rates,
        int rows,
        double step,
        int gaps,
        double top,
        int cycles,
        int practice,
        double cycleTime,
        boolean ownClock,
        Told lag,
        Told skew,
        double temperature0,
        double ambient0,
        List<Taxel> taxels,
        List<Share> crossTalk,
        Optional<String> crossTalkRefusal,
        List<String> notes) {
    /** A number about the whole log with its 95 % interval, or why it is not known. */
    public record Told(double value, Interval interval, Optional<String> refusal) {
        static Told of(double value, double half) {
            return new Told(value, new Interval(value - half, value + half), Optional.empty());
        }

        static Told refused(String why) {
            return new Told(Double.NaN, new Interval(Double.NaN, Double.NaN), Optional.of(why));
        }
    }

    /**
     * What one taxel reads when another is pressed.
     *
     * @param pressed number of the taxel that is pressed
     * @param reads number of the one that reads
     * @param slope of its reading against the force [reading/N]
     * @param share of the slope of the pressed one [-]
     * @param interval of the share, 95 %
     */
    public record Share(int pressed, int reads, double slope, double share, Interval interval) {}

    public Calibration {
        taxels = List.copyOf(taxels);
        crossTalk = List.copyOf(crossTalk);
        notes = List.copyOf(notes);
    }

    /** Taxels in that state. */
    public List<Taxel> in(Taxel.State state) {
        return taxels.stream().filter(t -> t.state() == state).toList();
    }
}
