package gripwright.drive;

import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.Motor;
import gripwright.model.Spool;
import gripwright.model.Transmission;
import java.util.function.ToDoubleFunction;

/** How much a winch takes up to close the empty hand. */
public final class FullTravel {
    private FullTravel() {}

    /**
     * From taut to a stall with every finger it pulls at its stops: the fingers' travels through the transmission and
     * the stretch of the tendon at the greatest tension [m].
     *
     * @param finger travel of a finger's tendon from open to all stops, 0 for one that takes no part [m]
     */
    public static double of(Motor motor, ToDoubleFunction<String> finger) {
        return of(motor.pulls(), finger) + motor.greatestTension() / motor.tendonStiffness();
    }

    /** A floating differential takes up the sum of ratio times branch travel, a spool what its longest branch needs. */
    private static double of(Transmission pulls, ToDoubleFunction<String> finger) {
        if (pulls instanceof FingerTendon leaf) {
            return finger.applyAsDouble(leaf.finger());
        }
        double sum = 0;
        if (pulls instanceof Floating floating) {
            for (Transmission.Branch b : floating.branches()) {
                sum += b.ratio() * of(b.to(), finger);
            }
        } else if (pulls instanceof Spool spool) {
            for (Transmission.Branch b : spool.branches()) {
                sum = Math.max(sum, of(b.to(), finger) / b.ratio());
            }
        }
        return sum;
    }
}
