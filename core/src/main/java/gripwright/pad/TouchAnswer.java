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
     */
    public record Touched(String name, double mass, double friction, Push.Result result) {
        public boolean knocked() {
            return result.moved() > KNOCKED;
        }
    }

    /** @param period of the scan [s] */
    public static TouchAnswer of(PadSetup setup, PadAnswer pad, double period, Need need) {
        int cells = setup.pads().stream().mapToInt(PadDesign::cells).sum();
        TouchStop.Forces forces = setup.touch()
                .forces(pad.strip().worst(), pad.design().chip().noise(), cells, period, pad.padStiffness());
        List<Touched> objects = new ArrayList<>();
        for (GraspObject object : need.objects()) {
            double friction = need.tableFriction().mean() * object.mass() * GRAVITY;
            objects.add(new Touched(
                    object.name(),
                    object.mass(),
                    friction,
                    setup.touch().push(forces, object.mass(), friction).run()));
        }
        return new TouchAnswer(pad.design(), forces, objects);
    }
}
