package gripwright.drive;

import gripwright.model.Finger;
import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.Motor;
import gripwright.model.Spool;
import gripwright.model.Transmission;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * All motors, transmissions and tendons of a hand as unilateral springs.
 *
 * <p>Each spring hangs between what pulls it (a winch, or a spool's drum) and what it pulls (fingers and further spools,
 * shared by floating differentials): stretch = pulled length - sum of ratio times travel. A floating differential is
 * exact (equal tension times ratio); every spool has a turn of its own as an unknown, so branches may go slack one by
 * one. A motor stalls at its greatest tension: its spring yields there.
 */
final class TendonNet {
    /** A spring: pulled by motor {@code motor} or, if that is -1, by {@code ratio} times the turn of {@code spool}. */
    record Spring(int motor, int spool, double ratio, double stiffness, double cap, List<Load> loads) {}

    /** What a spring pulls: a finger, or a spool if {@code finger} is -1, with the ratio of travel. */
    record Load(int finger, int spool, double ratio) {}

    private final List<Spring> springs = new ArrayList<>();
    private int spools;

    /**
     * @param taking names of the fingers taking part; the tendons of the others are held and left out
     */
    TendonNet(List<Finger> fingers, List<Motor> motors, Set<String> taking) {
        List<String> names = fingers.stream().map(f -> f.name()).toList();
        for (int m = 0; m < motors.size(); m++) {
            Motor motor = motors.get(m);
            List<Load> loads = loadsOf(motor.pulls(), 1, names, taking, motor);
            springs.add(new Spring(m, -1, 1, motor.tendonStiffness(), motor.greatestTension(), loads));
        }
    }

    private List<Load> loadsOf(Transmission t, double ratio, List<String> names, Set<String> taking, Motor motor) {
        List<Load> loads = new ArrayList<>();
        if (t instanceof FingerTendon leaf) {
            if (taking.contains(leaf.finger())) {
                loads.add(new Load(names.indexOf(leaf.finger()), -1, ratio));
            }
        } else if (t instanceof Floating floating) {
            for (Transmission.Branch b : floating.branches()) {
                loads.addAll(loadsOf(b.to(), ratio * b.ratio(), names, taking, motor));
            }
        } else if (t instanceof Spool spool) {
            int index = addSpool(spool, names, taking, motor);
            if (index >= 0) {
                loads.add(new Load(-1, index, ratio));
            }
        }
        return loads;
    }

    private int addSpool(Spool spool, List<String> names, Set<String> taking, Motor motor) {
        if (spool.fingers().stream().noneMatch(taking::contains)) {
            return -1;
        }
        int index = spools++;
        for (Transmission.Branch b : spool.branches()) {
            List<Load> loads = loadsOf(b.to(), 1, names, taking, motor);
            if (!loads.isEmpty()) {
                springs.add(new Spring(-1, index, b.ratio(), motor.tendonStiffness(), Double.POSITIVE_INFINITY, loads));
            }
        }
        return index;
    }

    List<Spring> springs() {
        return springs;
    }

    int spools() {
        return spools;
    }
}
