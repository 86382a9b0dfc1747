package gripwright.closing;

import gripwright.drive.FullTravel;
import gripwright.math.Streams;
import gripwright.mechanics.HandTree;
import gripwright.model.Finger;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Motor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import java.util.function.IntPredicate;

/**
 * A closing with chips: keeps its time, samples the chips, and stops motors and arm when one has felt something. A step
 * that would run past a stop is cut to end there. Workspace of one thread.
 */
final class TouchRun {
    private static final double NEVER = Double.POSITIVE_INFINITY;
    private static final double FIRST = 0.01;
    private static final double LONGEST = 0.02;
    /** Rounding of times [s]. */
    private static final double SAME = 1e-12;

    private final Sensing sensing;
    private final Hand hand;
    private final Grip grip;
    private final Rig rig;
    private final RunWatch watch;
    private final Stepper stepper;
    private final ChipWatch chips;
    private final Streams noise;
    private final String[] fingerOf;
    private final DoubleConsumer shiftHand;
    private final BooleanSupplier wound;
    private final boolean keep;
    /** Seconds of the closing per second of winding in the calculation [-]. */
    private final double windingRate;

    private final int[] listener;
    private final List<String> listeners = new ArrayList<>();
    private double[] stopAt = new double[0];
    private int[] heard = new int[0];
    private double[] arrived = new double[0];
    private boolean[] stopped = new boolean[0];
    private final boolean[] motorStopped;
    private final List<ChipReadings.Stop> stops = new ArrayList<>();
    private double rate;
    private double shift;
    private String story = "";
    boolean armMoves;

    /**
     * @param keep all readings, through the whole closing
     * @param shiftHand puts the hand this far along x from its place [m]
     * @param wound whether winding on is pointless
     */
    TouchRun(
            Sensing sensing,
            Hand hand,
            Grip grip,
            StepSystem system,
            RunWatch watch,
            Stepper stepper,
            boolean keep,
            DoubleConsumer shiftHand,
            BooleanSupplier wound) {
        this.sensing = sensing;
        this.hand = hand;
        this.grip = grip;
        this.rig = system.rig;
        this.watch = watch;
        this.stepper = stepper;
        this.keep = keep;
        this.shiftHand = shiftHand;
        this.wound = wound;
        ChipBank bank = new ChipBank(sensing, hand, system);
        chips = new ChipWatch(sensing, bank, keep);
        noise = new Streams(sensing.seed(), "chip noise");
        listener = new int[sensing.chips()];
        fingerOf = new String[sensing.chips()];
        int c = 0;
        for (Sensing.Strip strip : sensing.strips()) {
            for (int i = 0; i < strip.design().cells(); i++) {
                fingerOf[c++] = strip.place().on();
            }
        }
        motorStopped = new boolean[rig.drive().motors()];
        windingRate = sensing.touch().closing() * RunWatch.WINDING / longestTravel(hand, grip, rig);
    }

    /** Of all winches, from open to a stall of the empty hand [m]. */
    private static double longestTravel(Hand hand, Grip grip, Rig rig) {
        double most = 0;
        for (Motor motor : hand.motors()) {
            most = Math.max(most, FullTravel.of(motor, finger -> travel(finger, hand, grip, rig)));
        }
        return most;
    }

    private static double travel(String finger, Hand hand, Grip grip, Rig rig) {
        if (!grip.fingers().contains(finger)) {
            return 0;
        }
        double sum = 0;
        for (int j = 0; j < rig.tree().size(); j++) {
            HandTree.Coordinate c = rig.tree().coordinates().get(j);
            if (c.flexion() && hand.fingers().get(c.finger()).name().equals(finger)) {
                sum += c.momentArm() * (c.upper() - rig.open()[j]);
            }
        }
        return sum;
    }

    /** A run begins: zeros are taken. */
    void begin(String object, Conditions conditions) {
        chips.begin(noise.draws(object + " " + grip.name() + " " + conditions, 0));
        Arrays.fill(motorStopped, false);
        stops.clear();
        story = "";
        shift = 0;
        silence();
    }

    /** The open hand has arrived. */
    void arrived() {
        rate = windingRate;
        chips.refresh();
    }

    private void silence() {
        Arrays.fill(listener, -1);
        listeners.clear();
    }

    // ------------------------------------------------------------------ what a policy can do

    /** +1 for a chip on a finger that closes along +x, -1 against it, 0 for others. */
    int side(int chip) {
        return CentreOnTouch.side(hand, grip, fingerOf[chip]);
    }

    /** How far the arm may move the hand aside: the mean distance of the two sides' first joints along x [m]. */
    double room() {
        double[] sum = new double[3];
        int[] count = new int[3];
        for (Finger f : hand.fingers()) {
            int s = CentreOnTouch.side(hand, grip, f.name()) + 1;
            sum[s] += f.base().x();
            count[s]++;
        }
        return Math.abs(sum[2] / count[2] - sum[0] / count[0]);
    }

    double shift() {
        return shift;
    }

    void say(String words) {
        story = words;
    }

    /** Each motor winds until a finger of its own feels something, or stalls. */
    Stepper.End windEachUntilFelt() {
        silence();
        for (int m = 0; m < rig.drive().motors(); m++) {
            if (rig.drive().pulls(m)) {
                Motor motor = hand.motors().get(m);
                for (int c = 0; c < listener.length; c++) {
                    if (motor.pulls().fingers().contains(fingerOf[c])) {
                        listener[c] = listeners.size();
                    }
                }
                listeners.add(motor.name());
            }
        }
        listen();
        return wind();
    }

    /** All motors wind until one of those chips feels something, or they stall. */
    Stepper.End windUntilFelt(IntPredicate which) {
        listen("all motors", which);
        return wind();
    }

    /** The chip that ended the last stretch, -1 if none did. */
    int feltBy() {
        return stopped.length > 0 && stopped[0] ? heard[0] : -1;
    }

    /** The arm moves the hand to there [m] from its first place along x, or until one of those chips feels something. */
    Stepper.End moveHandUntilFelt(double to, IntPredicate which) {
        listen("arm", which);
        return move(to);
    }

    Stepper.End moveHand(double to) {
        silence();
        return move(to);
    }

    private void listen(String what, IntPredicate which) {
        silence();
        listeners.add(what);
        for (int c = 0; c < listener.length; c++) {
            listener[c] = which.test(c) ? 0 : -1;
        }
        listen();
    }

    private void listen() {
        chips.forgetAlarms();
        int n = listeners.size();
        stopAt = new double[n];
        Arrays.fill(stopAt, NEVER);
        heard = new int[n];
        arrived = new double[n];
        stopped = new boolean[n];
    }

    private Stepper.End wind() {
        rate = windingRate;
        Stepper.End end = Stepper.End.DONE;
        double first = FIRST;
        while (!allStopped() && !watch.allStalled() && !wound.getAsBoolean()) {
            watch.rememberWinding();
            end = stepper.ramp(watch::wind, 1, first, LONGEST, watch);
            if (end == Stepper.End.STUCK || watch.verdict != null) {
                return end;
            }
            first = 1e-4;
        }
        // what stands still until the others have come goes on afterwards
        Arrays.fill(motorStopped, false);
        silence();
        return Stepper.End.DONE;
    }

    private Stepper.End move(double to) {
        double from = shift;
        double way = Math.abs(to - from);
        if (way < SAME) {
            return Stepper.End.DONE;
        }
        armMoves = true;
        rate = 1;
        Stepper.End end = stepper.ramp(
                t -> {
                    shift = from + t * (to - from);
                    shiftHand.accept(shift);
                },
                way / sensing.touch().speed(),
                FIRST,
                LONGEST,
                watch);
        armMoves = false;
        rate = windingRate;
        silence();
        return end == Stepper.End.STUCK || watch.verdict != null ? end : Stepper.End.DONE;
    }

    // ------------------------------------------------------------------ along the steps

    private boolean allStopped() {
        for (boolean s : stopped) {
            if (!s) {
                return false;
            }
        }
        return !listeners.isEmpty();
    }

    boolean motorStopped(int motor) {
        return motorStopped[motor];
    }

    /** Share of a solved step that may be taken: up to the next stop. */
    double share(double stepTime) {
        if (listeners.isEmpty()) {
            return 1;
        }
        double seconds = stepTime * rate;
        double soonest = NEVER;
        for (int i = 0; i < stopAt.length; i++) {
            soonest = stopped[i] ? soonest : Math.min(soonest, stopAt[i]);
        }
        chips.lookAhead();
        for (int c = 0; c < listener.length; c++) {
            if (listener[c] >= 0 && !stopped[listener[c]]) {
                soonest = Math.min(soonest, chips.firstAlarm(c, seconds) + sensing.reaction());
            }
        }
        double left = soonest - chips.clock;
        return left < seconds - SAME ? Math.max(SAME, left) / seconds : 1;
    }

    /** After a step was taken; true if all that listened has stopped. */
    boolean accept(double stepTime) {
        if (listeners.isEmpty() && !keep) {
            chips.clock += stepTime * rate;
            return false;
        }
        chips.accept(stepTime * rate);
        for (int c = 0; c < listener.length; c++) {
            int l = listener[c];
            double alarm = chips.alarm(c);
            if (l >= 0 && !stopped[l] && alarm + sensing.reaction() < stopAt[l]) {
                stopAt[l] = alarm + sensing.reaction();
                arrived[l] = alarm;
                heard[l] = c;
            }
        }
        for (int l = 0; l < stopped.length && !listeners.isEmpty(); l++) {
            if (!stopped[l] && stopAt[l] <= chips.clock + SAME) {
                stopped[l] = true;
                stops.add(new ChipReadings.Stop(listeners.get(l), heard[l], arrived[l], chips.clock));
                stopMotor(listeners.get(l));
            }
        }
        return allStopped();
    }

    private void stopMotor(String name) {
        for (int m = 0; m < motorStopped.length; m++) {
            motorStopped[m] |= hand.motors().get(m).name().equals(name);
        }
    }

    /** After motion that takes no time. */
    void rested() {
        chips.refresh();
    }

    /** All that was said; a last round of the scan at rest stands at its end. */
    ChipReadings readings(Policy policy, List<String> bodies) {
        double end = chips.clock;
        return new ChipReadings(policy.word(), sensing.clock().period(), end, shift, chips.chips(bodies), stops, story);
    }

    /** The closed hand at rest: one more round. */
    void lastRound() {
        if (keep) {
            double end = chips.clock;
            chips.refresh();
            chips.accept(sensing.clock().period());
            chips.clock = end;
        }
    }
}
