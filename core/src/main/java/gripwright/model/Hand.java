package gripwright.model;

import gripwright.check.Check;
import java.util.List;
import java.util.Optional;

/** A whole hand: palm, fingers, motors, friction of its rubbers, the arm behind it, and its grips. */
public record Hand(
        String name,
        Palm palm,
        List<Finger> fingers,
        List<Motor> motors,
        FrictionTable friction,
        Optional<ArmCompliance> arm,
        List<Grip> grips) {
    public static final int MOST_FINGERS = 5;

    public Hand {
        fingers = List.copyOf(fingers);
        motors = List.copyOf(motors);
        grips = List.copyOf(grips);
        Check.that(
                !fingers.isEmpty() && fingers.size() <= MOST_FINGERS,
                "the hand has " + fingers.size() + " fingers; expected 1 to " + MOST_FINGERS);
    }

    /** The grip of that name; refuses with the names there are. */
    public Grip grip(String wanted) {
        return grips.stream()
                .filter(g -> g.name().equals(wanted))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no grip is called '" + wanted + "'; there are "
                        + grips.stream().map(Grip::name).toList()));
    }
}
