package gripwright.files;

import gripwright.pad.PadSetup;
import gripwright.pad.TouchStop;
import gripwright.units.Measure;
import java.util.List;

/** The tables of pads.yaml on how a finger stops, how pads are cast and how their answers are judged. */
final class TouchKeys {
    private TouchKeys() {}

    private static final Key<Double> SPEED = Key.required(
            "speed", new Quantities.Value(Range.above0(Measure.SPEED)), "Speed of the pad when it meets the object.");
    private static final Key<Double> CLOSING =
            Key.required("closing", new Quantities.Value(Range.above0(Measure.TIME)), "Time of one closing.");
    private static final Key<Double> WARMING = Key.byDefault(
            "warming",
            new Quantities.Value(Range.from0(Measure.WARMING)),
            "0.6 K/min",
            "an assumption; log a pad at rest while the motor works",
            "How fast the rubber warms while a closing lasts, from chips, motor or room.");
    private static final Range RATE = Range.within(Measure.SHARE, 1e-9, 0.5);
    private static final Key<Double> ALARMS = Key.required(
            "false alarms", new Quantities.Value(RATE), "Wanted rate of false alarms per closing, over all chips.");
    private static final Key<Double> TOUCH_MISSES = Key.byDefault(
            "misses",
            new Quantities.Value(RATE),
            "5 %",
            "usual for detection limits",
            "Rate of misses at which the force at detection is stated.");
    private static final Key<Double> DELAY = Key.required(
            "delay", new Quantities.Value(Range.from0(Measure.TIME)), "From a value in the controller to the motor.");
    private static final Key<Double> DECELERATION = Key.required(
            "deceleration",
            new Quantities.Value(Range.above0(Measure.ACCELERATION)),
            "Of the pad once the motor brakes.");
    private static final Key<Double> FINGER_STIFFNESS = Key.required(
            "finger stiffness",
            new Quantities.Value(Range.above0(Measure.STIFFNESS)),
            "Of finger and drive at the pad, the pad's own rubber not counted.");
    static final Section<TouchStop> TOUCH_SECTION = Section.of(
            "touch",
            "How a finger stops when it feels something.",
            List.of(SPEED, CLOSING, WARMING, ALARMS, TOUCH_MISSES, DELAY, DECELERATION, FINGER_STIFFNESS),
            b -> new TouchStop(
                    b.get(SPEED),
                    b.get(CLOSING),
                    b.get(WARMING),
                    b.get(ALARMS),
                    b.get(TOUCH_MISSES),
                    b.get(DELAY),
                    b.get(DECELERATION),
                    b.get(FINGER_STIFFNESS)));

    private static final Key<Double> VACUUM = Key.required(
            "vacuum",
            new Quantities.Value(Range.above0(Measure.PRESSURE).upTo(101325)),
            "Absolute pressure the pot is pulled to (29 inHg on a gauge is about 31 hPa absolute).");
    private static final Key<Double> VISCOSITY =
            Key.required("viscosity", new Quantities.Value(Range.above0(Measure.VISCOSITY)), "Of the mixed resin.");
    private static final Key<Double> POT_LIFE =
            Key.required("pot life", new Quantities.Value(Range.above0(Measure.TIME)), "From the resin maker's sheet.");
    private static final Key<Double> STIRRED = Key.byDefault(
            "stirred air",
            new Quantities.Value(Range.within(Measure.SHARE, 0, 0.5)),
            "5 %",
            "gives the 3 to 5 times the resin's volume that pots are commonly chosen for; common practice, no source",
            "Volume of air stirred in, as a share of the resin's.");
    static final Section<PadSetup.Casting> CASTING_SECTION = Section.of(
            "casting",
            "How the rubber is poured.",
            List.of(VACUUM, VISCOSITY, POT_LIFE, STIRRED),
            b -> new PadSetup.Casting(b.get(VACUUM), b.get(VISCOSITY), b.get(POT_LIFE), b.get(STIRRED)));

    private static final Key<Double> FORCE = Key.required(
            "force",
            new Quantities.Value(Range.above0(Measure.FORCE)),
            "Contact force a cell should bear without clipping, and at which its sense of place is judged.");
    private static final Key<Double> FALSE_ALARM = Key.byDefault(
            "false alarm", new Quantities.Value(RATE), "5 %", "usual for detection limits", "Of a detection limit.");
    private static final Key<Double> MISS = Key.byDefault(
            "miss", new Quantities.Value(RATE), "5 %", "usual for detection limits", "Of a detection limit.");
    private static final Key<Integer> ZEROS = PadKinds.whole(
            "zero readings",
            1,
            1_000_000,
            "100",
            "a zero taken just before each closing",
            "Readings averaged for the zero.");
    private static final Key<Double> GAIN_ERROR = Key.byDefault(
            "gain error",
            new Quantities.Value(Range.within(Measure.SHARE, 0, 1)),
            "5 %",
            "a guess; without it the sense of place comes out absurdly fine",
            "How far each cell's real gain is off the model's.");
    static final Section<PadSetup.Judging> WANTED_SECTION = Section.of(
            "wanted sense",
            "What the pads should feel, and how it is judged.",
            List.of(FORCE, FALSE_ALARM, MISS, ZEROS, GAIN_ERROR),
            b -> new PadSetup.Judging(b.get(FALSE_ALARM), b.get(MISS), b.get(ZEROS), b.get(GAIN_ERROR), b.get(FORCE)));
}
