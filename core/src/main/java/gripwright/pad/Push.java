package gripwright.pad;

import gripwright.check.Check;

/**
 * A finger comes at a free object at constant speed, feels it after a while, and halts: how far is the object pushed?
 * Stick, slide and flight follow one another, each in closed form up to the event that ends it.
 *
 * @param mass [kg]
 * @param friction force of the object on the table [N]
 * @param stiffness of pad and finger in series [N/m]
 * @param speed of the finger [m/s]
 * @param notice force at which it is felt [N]
 * @param delay from there to the finger's halt, taken as sudden [s]
 */
public record Push(double mass, double friction, double stiffness, double speed, double notice, double delay) {
    private static final int MOST_EVENTS = 200;

    public Push {
        Check.positive(mass, "mass", "kg");
        Check.notNegative(friction, "friction", "N");
        Check.positive(stiffness, "stiffness", "N/m");
        Check.positive(speed, "speed", "m/s");
        Check.positive(notice, "force at detection", "N");
        Check.notNegative(delay, "delay", "s");
    }

    /**
     * What came of it.
     *
     * @param noticed false if the object is pushed along for good, its force never reaching the threshold
     * @param moved distance of the object when all is at rest [m]; infinite if it is never noticed
     * @param peak greatest contact force [N]
     */
    public record Result(boolean noticed, double moved, double peak) {}

    private enum Phase {
        STICK,
        SLIDE,
        FLY
    }

    /** Force rises no further than this on an object that slides [N]. */
    public double greatestSliding() {
        return friction + speed * Math.sqrt(stiffness * mass);
    }

    public Result run() {
        if (notice > greatestSliding()) {
            return new Result(false, Double.POSITIVE_INFINITY, greatestSliding());
        }
        return new Run().result();
    }

    private final class Run {
        private final double w = Math.sqrt(stiffness / mass);
        private final double rest = friction / stiffness;
        private Phase phase = Phase.STICK;
        private double y; // squeeze of the spring, negative across a gap
        private double finger = speed;
        private double object;
        private double moved;
        private double peak;
        private double toHalt = Double.POSITIVE_INFINITY;

        Result result() {
            for (int event = 0; event < MOST_EVENTS; event++) {
                boolean done = switch (phase) {
                    case STICK -> stick();
                    case SLIDE -> slide();
                    case FLY -> fly();
                };
                if (done) {
                    return new Result(true, moved, peak);
                }
            }
            throw new IllegalStateException("a push of " + mass + " kg did not come to rest in " + MOST_EVENTS
                    + " events; force at detection " + notice + " N");
        }

        private void felt() {
            if (toHalt == Double.POSITIVE_INFINITY && stiffness * y >= notice * (1 - 1e-12)) {
                toHalt = delay;
            }
        }

        private void pass(double time) {
            toHalt -= time;
            if (toHalt <= 0) {
                finger = 0;
                toHalt = 0;
            }
        }

        private boolean stick() {
            object = 0;
            if (finger == 0) {
                return true;
            }
            double toBreak = (rest - y) / finger;
            double toFeel = toHalt == Double.POSITIVE_INFINITY ? (notice / stiffness - y) / finger : toHalt;
            double step = Math.max(0, Math.min(toBreak, toFeel));
            y += finger * step;
            peak = Math.max(peak, stiffness * y);
            pass(step);
            felt();
            if (toBreak <= toFeel) {
                phase = Phase.SLIDE;
            } else if (toHalt == 0) {
                finger = 0;
            }
            return false;
        }

        /** y = rest + a cos wt + b sin wt. */
        private boolean slide() {
            double a = y - rest;
            double b = (finger - object) / w;
            double radius = Math.hypot(a, b);
            double turn = Math.atan2(b, a);
            // The object's speed is finger - y'; it stops where y' rises to the finger's speed.
            double rate = Math.atan2(-a, b);
            double stop = radius * w <= finger ? Double.POSITIVE_INFINITY : rising(rate, finger / (radius * w)) / w;
            double leave = radius <= rest ? Double.POSITIVE_INFINITY : falling(turn, -rest / radius) / w;
            double level = (notice / stiffness - rest) / radius;
            double feel = toHalt < Double.POSITIVE_INFINITY
                    ? toHalt
                    : Math.abs(level) > 1 ? Double.POSITIVE_INFINITY : rising(turn, level) / w;
            double halt = finger == 0 ? Double.POSITIVE_INFINITY : feel;
            double step = Math.min(stop, Math.min(leave, halt));
            if (step == Double.POSITIVE_INFINITY) {
                step = 2 * Math.PI / w; // slides with the finger's speed on average; the speed dips to 0 at the end
            }
            double angle = w * step;
            double before = y;
            y = rest + a * Math.cos(angle) + b * Math.sin(angle);
            object = finger - w * (b * Math.cos(angle) - a * Math.sin(angle));
            moved += finger * step - (y - before);
            double top = turn < 0 ? turn + 2 * Math.PI : turn;
            peak = Math.max(peak, stiffness * (top <= angle ? rest + radius : Math.max(y, before)));
            if (step == leave && step <= stop && step <= halt) {
                phase = Phase.FLY;
                y = 0;
            } else if (step == stop || object <= 1e-15) {
                phase = Phase.STICK;
                object = 0;
            }
            boolean counting = toHalt < Double.POSITIVE_INFINITY;
            if (counting) {
                pass(step);
            } else if (step == halt) {
                y = Math.max(y, notice / stiffness);
                felt();
                if (toHalt == 0) {
                    finger = 0;
                }
            }
            return false;
        }

        private boolean fly() {
            double brake = friction / mass;
            double stop = brake == 0 ? Double.POSITIVE_INFINITY : object / brake;
            double gain = finger - object;
            // Gap -y closes by gain t + brake t^2 / 2.
            double meet = Double.POSITIVE_INFINITY;
            if (brake > 0) {
                double root = gain * gain - 2 * brake * y;
                if (root >= 0) {
                    double t = (-gain + Math.sqrt(root)) / brake;
                    meet = t > 1e-12 ? t : Double.POSITIVE_INFINITY;
                }
            } else if (gain > 0) {
                meet = -y / gain;
            }
            double step = Math.min(Math.min(stop, meet), finger > 0 ? toHalt : Double.POSITIVE_INFINITY);
            if (step == Double.POSITIVE_INFINITY) {
                moved = Double.POSITIVE_INFINITY;
                return true;
            }
            moved += object * step - brake * step * step / 2;
            y += gain * step + brake * step * step / 2;
            object = Math.max(0, object - brake * step);
            pass(step);
            if (step == meet) {
                y = 0;
                phase = object > 0 ? Phase.SLIDE : Phase.STICK;
            } else if (step == stop) {
                phase = Phase.STICK; // at rest with a gap; a finger that still moves closes it
            }
            return false;
        }

        /** Next angle above 0 at which cos(angle - turn) falls through c. */
        private double falling(double turn, double c) {
            return ahead(turn + Math.acos(c));
        }

        private double rising(double turn, double c) {
            return ahead(turn - Math.acos(c));
        }

        private double ahead(double angle) {
            double full = 2 * Math.PI;
            double out = angle % full;
            out = out < 0 ? out + full : out;
            return out < 1e-9 || out > full - 1e-12 ? full : out;
        }
    }
}
