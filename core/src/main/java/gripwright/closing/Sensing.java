package gripwright.closing;

import gripwright.check.Check;
import gripwright.pad.Bus;
import gripwright.pad.Cavity;
import gripwright.pad.Detection;
import gripwright.pad.PadDesign;
import gripwright.pad.PadGeometry;
import gripwright.pad.PadModel;
import gripwright.pad.PadPlace;
import gripwright.pad.PadResponse;
import gripwright.pad.PadSetup;
import gripwright.pad.ScanAnswer;
import gripwright.pad.ScanClock;
import gripwright.pad.TouchStop;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The chips of a hand, what each makes of a force, and how they are read. Made once per project, since it solves each
 * pad design; immutable, shared by threads.
 *
 * @param strips in the order of the project folder; chips are counted strip by strip, row by row, along each row
 * @param zeros readings averaged for the zero, in the open hand before it comes in
 * @param deviations alarm above the zero, over the noise of reading and zero together [-]
 * @param seed of the chips' noise
 */
public record Sensing(List<Strip> strips, ScanClock clock, TouchStop touch, int zeros, double deviations, long seed) {
    /** Of the air, absolute; every chip reads it at rest [Pa]. */
    public static final double AMBIENT = Cavity.AMBIENT;

    /** What a reading is, for printing beside it. */
    public static final String READING = "Reading: air pressure, plus the sum over the pad's points of force times the"
            + " pad model's response at that distance, plus noise; rounded to the chip's resolution, cut at its range."
            + " Friction on the pad, heat and weather are left out.";

    /** How readings get their times, for printing beside them. */
    public static final String TIME =
            "Time: the winches run evenly, all alike, so fast that the one with the longest way"
                    + " would take all its joints from open to their stops, and stall, in the time of `touch: closing`; 0 when they"
                    + " start. The arm moves at `touch: speed`. Snaps and settling take no time.";

    /** One strip of chips, and how its chips respond. */
    public record Strip(PadDesign design, PadPlace place, PadResponse response) {
        /** Middle of a chip along the strip, 0 in its middle [m]. */
        public double along(int chip) {
            return design.along(chip);
        }

        /** Middle of a chip across the strip [m]. */
        public double across(int chip) {
            return design.across(chip);
        }
    }

    public Sensing {
        strips = List.copyOf(strips);
        int chips = strips.stream().mapToInt(s -> s.design().cells()).sum();
        Check.count(clock.chips(), chips, "chips of the scan", "as many as the strips have");
        Check.that(zeros >= 1, "the zero is taken from " + zeros + " readings");
    }

    private record Design(PadGeometry geometry, double modulus, double bulk) {}

    /**
     * @param seed of the chips' noise
     * @throws IllegalArgumentException if no way of reading all chips is possible
     */
    public static Sensing of(PadSetup setup, long seed) {
        Check.count(setup.places().size(), setup.pads().size(), "places of pads", "one per pad");
        ScanAnswer scan = ScanAnswer.of(setup);
        Bus.Plan plan = scan.fastest()
                .orElseThrow(() -> new IllegalArgumentException(
                        "the chips cannot be read: " + scan.plans().get(0).obstacle()));
        Map<Design, PadResponse> solved = new HashMap<>();
        List<Strip> strips = new ArrayList<>();
        for (int i = 0; i < setup.pads().size(); i++) {
            PadDesign pad = setup.pads().get(i);
            Design design = new Design(PadGeometry.of(pad.chip(), pad.overBoard()), pad.modulus(), pad.bulk());
            PadResponse response = solved.computeIfAbsent(design, d -> PadModel.filled(d.geometry, d.modulus, d.bulk));
            strips.add(new Strip(pad, setup.places().get(i), response));
        }
        TouchStop touch = setup.touch();
        return new Sensing(
                strips,
                ScanClock.of(setup.bus(), scan.chip(), scan.chips(), plan),
                touch,
                setup.judging().zeros(),
                Detection.threshold(touch.falseAlarms(), scan.chips(), Math.max(1, touch.closing() / plan.period())),
                seed);
    }

    public Sensing withDeviations(double most) {
        return new Sensing(strips, clock, touch, zeros, most, seed);
    }

    public Sensing withSeed(long other) {
        return new Sensing(strips, clock, touch, zeros, deviations, other);
    }

    public int chips() {
        return clock.chips();
    }

    /** Alarm of a strip's chips above their zero [Pa]. */
    public double threshold(Strip strip) {
        return deviations * strip.design().chip().noise() * Math.sqrt(1 + 1.0 / zeros);
    }

    /** From a value's arrival to the halt: the controller's delay, and braking as the same way at full speed [s]. */
    public double reaction() {
        return touch.delay() + touch.speed() / (2 * touch.deceleration());
    }
}
