package gripwright.model;

import gripwright.check.Check;
import java.util.List;

/**
 * What must be picked up, from what, how wrongly placed, and what happens to it afterwards.
 *
 * @param tableFriction coefficient of the objects on the surface [-]
 * @param lift height of the real lift [m]
 * @param acceleration greatest transport acceleration [m/s^2]
 * @param wantedSuccess share of pick-ups that must work [-], 0 to 1
 */
public record Need(
        String name,
        Spread tableFriction,
        Placement placement,
        double lift,
        double acceleration,
        double wantedSuccess,
        List<GraspObject> objects) {
    public Need {
        objects = List.copyOf(objects);
        Check.that(
                wantedSuccess > 0 && wantedSuccess <= 1,
                "wanted success is " + wantedSuccess + "; it must be above 0 % and at most 100 %");
    }

    /** The object of that name; refuses with the names there are. */
    public GraspObject object(String wanted) {
        return objects.stream()
                .filter(o -> o.name().equals(wanted))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no object is called '" + wanted + "'; there are "
                        + objects.stream().map(GraspObject::name).toList()));
    }
}
