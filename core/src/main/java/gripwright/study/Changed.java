package gripwright.study;

import gripwright.model.Finger;
import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.FrictionTable;
import gripwright.model.Hand;
import gripwright.model.Joint;
import gripwright.model.JointKind;
import gripwright.model.Motor;
import gripwright.model.PadLayer;
import gripwright.model.Palm;
import gripwright.model.Phalanx;
import gripwright.model.Spool;
import gripwright.model.Transmission;
import gripwright.model.Transmission.Branch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;

/** Hands with one thing changed. */
final class Changed {
    private Changed() {}

    /** The changed hand, which says in its name what was changed: two hands of a study never have the same one. */
    static Hand named(DesignChange change, Hand hand) {
        Hand h = change.applied().apply(hand);
        String name = hand.name() + ", " + change.words();
        return new Hand(name, h.palm(), h.fingers(), h.motors(), h.friction(), h.arm(), h.grips());
    }

    static Hand fingers(Hand h, UnaryOperator<Finger> change) {
        return hand(h, h.palm(), h.fingers().stream().map(change).toList(), h.motors(), h.friction());
    }

    static Hand finger(Hand h, String name, UnaryOperator<Finger> change) {
        return fingers(h, f -> f.name().equals(name) ? change.apply(f) : f);
    }

    static Hand friction(Hand h, FrictionTable friction) {
        return hand(h, h.palm(), h.fingers(), h.motors(), friction);
    }

    static Hand tension(Hand h, double factor) {
        List<Motor> motors =
                h.motors().stream().map(m -> motor(m, m.pulls(), factor)).toList();
        return hand(h, h.palm(), h.fingers(), motors, h.friction());
    }

    static Hand phalanges(Hand h, int at, UnaryOperator<Phalanx> change) {
        return fingers(
                h,
                f -> new Finger(f.name(), f.base(), f.closesToward(), replaced(f.phalanges(), at, change), f.joints()));
    }

    static Hand joints(Hand h, int at, UnaryOperator<Joint> change) {
        return fingers(h, f -> joints(f, at, change));
    }

    static Finger joints(Finger f, int at, UnaryOperator<Joint> change) {
        return new Finger(f.name(), f.base(), f.closesToward(), f.phalanges(), replaced(f.joints(), at, change));
    }

    /** All pads, the palm's included, with their thickness scaled. */
    static Hand pads(Hand h, double factor) {
        Palm p = h.palm();
        Palm palm = new Palm(p.sizeX(), p.sizeY(), p.bone(), pad(p.pad(), 1, factor));
        List<Finger> fingers = h.fingers().stream()
                .map(f -> new Finger(
                        f.name(),
                        f.base(),
                        f.closesToward(),
                        f.phalanges().stream()
                                .map(x ->
                                        new Phalanx(x.length(), x.width(), x.bone(), pad(x.pad(), 1, factor), x.tip()))
                                .toList(),
                        f.joints()))
                .toList();
        return hand(h, palm, fingers, h.motors(), h.friction());
    }

    static Phalanx longer(Phalanx p, double factor) {
        return new Phalanx(p.length() * factor, p.width(), p.bone(), pad(p.pad(), factor, 1), p.tip());
    }

    static Joint rest(Joint j, double rest) {
        return new Joint(j.kind(), rest, j.lower(), j.upper(), j.momentArm());
    }

    static Joint arm(Joint j, double factor) {
        return new Joint(j.kind(), j.rest(), j.lower(), j.upper(), j.momentArm() * factor);
    }

    /** The rate in flexion only; sideways a joint stays as it is. */
    static Joint spring(Joint j, double factor) {
        return new Joint(new Retuned(j.kind(), factor), j.rest(), j.lower(), j.upper(), j.momentArm());
    }

    /** A joint whose flexion rate is scaled. */
    private record Retuned(JointKind kind, double factor) implements JointKind {
        @Override
        public double bendingRate() {
            return kind.bendingRate() * factor;
        }

        @Override
        public OptionalDouble sidewaysRate() {
            return kind.sidewaysRate();
        }

        @Override
        public String origin() {
            return kind.origin() + ", times " + factor;
        }
    }

    /**
     * Without the tendon of a finger. A motor that pulls nothing else keeps its tendon, which then pulls nothing
     * because the finger's moment arms are gone.
     */
    static Hand cut(Hand h, String finger) {
        Hand loose = finger(
                h,
                finger,
                f -> new Finger(
                        f.name(),
                        f.base(),
                        f.closesToward(),
                        f.phalanges(),
                        f.joints().stream().map(j -> arm(j, 0)).toList()));
        List<Motor> motors = h.motors().stream()
                .map(m -> without(m.pulls(), finger).map(t -> motor(m, t, 1)).orElse(m))
                .toList();
        return hand(loose, loose.palm(), loose.fingers(), motors, loose.friction());
    }

    private static Optional<Transmission> without(Transmission t, String finger) {
        if (t instanceof FingerTendon leaf) {
            return leaf.finger().equals(finger) ? Optional.empty() : Optional.of(t);
        }
        if (t instanceof Floating floating) {
            List<Branch> left = without(floating.branches(), finger);
            return left.isEmpty() ? Optional.empty() : Optional.of(new Floating(left));
        }
        List<Branch> left = without(((Spool) t).branches(), finger);
        return left.isEmpty() ? Optional.empty() : Optional.of(new Spool(left));
    }

    private static List<Branch> without(List<Branch> branches, String finger) {
        List<Branch> left = new ArrayList<>();
        for (Branch branch : branches) {
            without(branch.to(), finger).ifPresent(to -> left.add(new Branch(branch.ratio(), to)));
        }
        return left;
    }

    private static PadLayer pad(PadLayer p, double length, double thickness) {
        return new PadLayer(p.length() * length, p.thickness() * thickness, p.rubber());
    }

    private static Motor motor(Motor m, Transmission pulls, double tension) {
        return new Motor(
                m.name(),
                pulls,
                m.greatestTension() * tension,
                m.tendonStiffness(),
                m.sheathFriction(),
                m.wrap(),
                m.whenOff());
    }

    private static Hand hand(Hand h, Palm palm, List<Finger> fingers, List<Motor> motors, FrictionTable friction) {
        return new Hand(h.name(), palm, fingers, motors, friction, h.arm(), h.grips());
    }

    private static <T> List<T> replaced(List<T> all, int at, UnaryOperator<T> change) {
        List<T> changed = new ArrayList<>(all);
        if (at < changed.size()) {
            changed.set(at, change.apply(changed.get(at)));
        }
        return changed;
    }
}
