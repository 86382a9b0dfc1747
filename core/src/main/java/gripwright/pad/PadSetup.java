package gripwright.pad;

import gripwright.check.Check;
import java.util.List;
import java.util.Optional;

/**
 * Everything the project folder says about pads that feel.
 *
 * @param addresses different addresses each chip can be set to
 * @param readings the columns of a log, if they are named
 */
public record PadSetup(
        List<PadDesign> pads,
        Bus bus,
        int addresses,
        TouchStop touch,
        Casting casting,
        Judging judging,
        Optional<Readings> readings) {
    public PadSetup {
        pads = List.copyOf(pads);
        Check.that(!pads.isEmpty(), "there are no pads");
    }

    /** How the rubber is poured: vacuum (absolute) [Pa], viscosity [Pa s], pot life [s], share of air stirred in [-]. */
    public record Casting(double vacuum, double viscosity, double potLife, double stirredAir) {}

    /**
     * How answers are judged.
     *
     * @param falseAlarm and
     * @param miss rates at which a detection limit is stated [-]
     * @param zeros readings averaged for the zero
     * @param modelError relative error of each cell's gain [-]
     * @param force at which place is judged, and which the pad should bear without clipping [N]
     */
    public record Judging(double falseAlarm, double miss, int zeros, double modelError, double force) {}
}
