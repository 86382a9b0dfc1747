package gripwright.pad;

import gripwright.model.GraspObject;
import gripwright.model.Need;
import java.util.ArrayList;
import java.util.List;

/** What touch does to each object of a need before the finger halts, at one pad. */
public record TouchAnswer(PadDesign pad, TouchStop.Forces forces, List<Touched> objects) {
    private static final double GRAVITY = 9.80665;

    /** More than this is called knocked away; our own convention [m]. */
    public static final double KNOCKED = 5e-3;

    public TouchAnswer {
        objects = List.copyOf(objects);
    }

    /**
     * One object.
     *
     * @param friction of the object on the table [N]
     * @param result if the object meets the pad at the worst place, between two chips
     * @param overChip if it meets the pad over a chip
     */
    public record Touched(String name, double mass, double friction, Push.Result result, Push.Result overChip) {
        public boolean knocked() {
            return result.moved() > KNOCKED;
        }
    }

    /** @param period of the scan [s] */
    public static TouchAnswer of(PadSetup setup, PadAnswer pad, double period, Need need) {
        int cells = setup.pads().stream().mapToInt(PadDesign::cells).sum();
        TouchStop.Forces forces = forces(setup, pad, pad.strip().worst(), cells, period);
        TouchStop.Forces best = forces(setup, pad, pad.response().peak(), cells, period);
        List<Touched> objects = new ArrayList<>();
        for (GraspObject object : need.objects()) {
            double mass = object.mass();
            double friction = need.tableFriction().mean() * mass * GRAVITY;
            objects.add(new Touched(
                    object.name(),
                    mass,
                    friction,
                    setup.touch().push(forces, mass, friction).run(),
                    setup.touch().push(best, mass, friction).run()));
        }
        return new TouchAnswer(pad.design(), forces, objects);
    }

    private static TouchStop.Forces forces(
            PadSetup setup, PadAnswer pad, double sensitivity, int cells, double period) {
        return setup.touch().forces(sensitivity, pad.design().chip().noise(), cells, period, pad.padStiffness());
    }
}
