package gripwright.model;

import gripwright.check.Check;
import java.util.OptionalDouble;

/**
 * A pin with a torsion spring.
 *
 * @param bendingRate of the spring [N m/rad], 0 or more
 * @param sidewaysRate play and bending of the pin out of the plane [N m/rad]; empty if rigid
 */
public record PinJoint(double bendingRate, OptionalDouble sidewaysRate) implements JointKind {
    public PinJoint {
        Check.notNegative(bendingRate, "spring rate", "N*m/rad");
        if (sidewaysRate.isPresent()) {
            Check.positive(sidewaysRate.getAsDouble(), "sideways rate", "N*m/rad");
        }
    }

    @Override
    public String origin() {
        return "pin with a torsion spring, rates as given";
    }
}
