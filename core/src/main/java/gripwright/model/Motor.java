package gripwright.model;

import gripwright.check.Check;
import java.util.Map;

/**
 * One motor with a winch and what it pulls.
 *
 * @param greatestTension at the winch [N]; the motor stalls there
 * @param tendonStiffness of the tendon between winch (or spool branch) and finger [N/m]
 * @param sheathFriction Coulomb coefficient [-] of tendon against sheath and guides
 * @param wrap total bend of the sheath between winch and first joint [rad], by finger; missing = 0
 */
public record Motor(
        String name,
        Transmission pulls,
        double greatestTension,
        double tendonStiffness,
        double sheathFriction,
        Map<String, Double> wrap,
        WhenOff whenOff) {
    /** What the winch does once the current is off. */
    public enum WhenOff {
        /** Keeps its length (a self-locking gear or a brake). */
        LOCKED,
        /** Must stay powered: keeps its tension. */
        POWERED
    }

    public Motor {
        wrap = Map.copyOf(wrap);
        Check.positive(greatestTension, "greatest tension of motor " + name, "N");
        Check.positive(tendonStiffness, "tendon stiffness of motor " + name, "N/m");
        Check.notNegative(sheathFriction, "sheath friction of motor " + name, "");
    }
}
