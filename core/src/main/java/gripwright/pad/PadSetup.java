package gripwright.pad;

import gripwright.check.Check;
import java.util.List;
import java.util.Optional;

/**
 * Everything the project folder says about pads that feel.
 *
 * @param addresses different addresses each chip can be set to
 * @param places where each pad lies, in the order of the pads; empty if that is not known
 * @param readings the columns of a log, if they are named
 */
public record PadSetup(
        List<PadDesign> pads,
        Bus bus,
        int addresses,
        TouchStop touch,
        Casting casting,
        Judging judging,
        List<PadPlace> places,
        Optional<Readings> readings) {
    public PadSetup {
        pads = List.copyOf(pads);
        places = List.copyOf(places);
        Check.that(
                places.isEmpty() || places.size() == pads.size(),
                "there are " + pads.size() + " pads and " + places.size() + " places");
        Check.that(!pads.isEmpty(), "there are no pads");
    }

    /** Without the places of the pads. */
    public PadSetup(
            List<PadDesign> pads,
            Bus bus,
            int addresses,
            TouchStop touch,
            Casting casting,
            Judging judging,
            Optional<Readings> readings) {
        this(pads, bus, addresses, touch, casting, judging, List.of(), readings);
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
