package gripwright.study;

import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.FrictionTable;
import gripwright.model.Hand;
import gripwright.model.Joint;
import gripwright.model.Spread;
import gripwright.study.DesignChange.Kind;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;

/** The changes that are tried on a hand, one at a time. A new quantity is one line in {@link #of}. */
public final class DesignChanges {
    /** Share by which a quantity moves that has no stated tolerance [-]. */
    public static final double STEP = 0.20;

    /** Least move of a rest angle, for which a share of a small angle says nothing [rad]. */
    static final double LEAST_TURN = StrictMath.toRadians(5);

    /** What moves by how much, for printing beside the ranking. */
    public static final String RULE =
            "Each quantity moves alone, in all fingers alike, by 20 % up and down; friction by its"
                    + " stated standard deviation, rest angles by at least 5 deg. Pads keep their share of a phalanx. Faults: one"
                    + " spring 20 % off; pads worn to 70 % of thickness and friction; a cut tendon, whose finger is no longer"
                    + " pulled while a differential works on from its stop.";

    private static final String[] PLACES = {"first", "second", "third", "fourth"};
    private static final double WORN = 0.7;

    private DesignChanges() {}

    /** All changes of a hand, in a fixed order. */
    public static List<DesignChange> of(Hand hand) {
        List<DesignChange> all = new ArrayList<>();
        int most = hand.fingers().stream()
                .mapToInt(f -> f.phalanges().size())
                .max()
                .orElse(0);
        for (int i = 0; i < most; i++) {
            int at = i;
            scaled(all, PLACES[i] + " phalanx length", (h, k) -> Changed.phalanges(h, at, p -> Changed.longer(p, k)));
            scaled(all, PLACES[i] + " joint spring", (h, k) -> Changed.joints(h, at, j -> Changed.spring(j, k)));
            moved(all, PLACES[i] + " rest angle", (h, s) -> Changed.joints(h, at, j -> restMoved(j, s)));
            scaled(all, PLACES[i] + " moment arm", (h, k) -> Changed.joints(h, at, j -> Changed.arm(j, k)));
        }
        scaled(all, "base spacing", DesignChanges::spaced);
        scaled(all, "pad thickness", (h, k) -> Changed.pads(h, k));
        scaled(all, "greatest tension", (h, k) -> Changed.tension(h, k));
        friction(all, hand);
        faults(all, hand);
        return List.copyOf(all);
    }

    private static void scaled(List<DesignChange> all, String quantity, BiFunction<Hand, Double, Hand> change) {
        all.add(design(quantity, "20 % less", hand -> change.apply(hand, 1 - STEP)));
        all.add(design(quantity, "20 % more", hand -> change.apply(hand, 1 + STEP)));
    }

    private static void moved(List<DesignChange> all, String quantity, BiFunction<Hand, Integer, Hand> change) {
        all.add(design(quantity, "20 % less", hand -> change.apply(hand, -1)));
        all.add(design(quantity, "20 % more", hand -> change.apply(hand, 1)));
    }

    private static DesignChange design(String quantity, String change, UnaryOperator<Hand> applied) {
        return new DesignChange(quantity, change, Kind.DESIGN, applied);
    }

    private static Joint restMoved(Joint joint, int sign) {
        return Changed.rest(joint, joint.rest() + sign * Math.max(STEP * Math.abs(joint.rest()), LEAST_TURN));
    }

    private static Hand spaced(Hand hand, double factor) {
        return Changed.fingers(hand, f -> {
            Vec3 base = new Vec3(
                    f.base().x() * factor, f.base().y() * factor, f.base().z());
            return new Finger(f.name(), base, f.closesToward(), f.phalanges(), f.joints());
        });
    }

    private static void friction(List<DesignChange> all, Hand hand) {
        boolean stated = hand.friction().byRubber().values().stream()
                .flatMap(bySurface -> bySurface.values().stream())
                .anyMatch(spread -> spread.deviation() > 0);
        String by = stated ? "one deviation" : "20 %";
        all.add(design("pad friction", by + " less", h -> rubbed(h, s -> step(s, -1, stated))));
        all.add(design("pad friction", by + " more", h -> rubbed(h, s -> step(s, 1, stated))));
    }

    private static Spread step(Spread spread, int sign, boolean stated) {
        double by = stated ? spread.deviation() : STEP * spread.mean();
        return new Spread(Math.max(0, spread.mean() + sign * by), spread.deviation());
    }

    private static Hand rubbed(Hand hand, UnaryOperator<Spread> change) {
        Map<String, Map<String, Spread>> changed = new TreeMap<>();
        hand.friction().byRubber().forEach((rubber, bySurface) -> {
            Map<String, Spread> row = new LinkedHashMap<>();
            new TreeMap<>(bySurface).forEach((surface, spread) -> row.put(surface, change.apply(spread)));
            changed.put(rubber, row);
        });
        return Changed.friction(hand, new FrictionTable(changed, hand.friction().bone()));
    }

    private static void faults(List<DesignChange> all, Hand hand) {
        for (Finger finger : hand.fingers()) {
            String name = finger.name();
            all.add(fault(name + ": first spring", "20 % weak", h -> Changed.finger(h, name, f -> springOff(f, 0.8))));
            all.add(fault(name + ": first spring", "20 % stiff", h -> Changed.finger(h, name, f -> springOff(f, 1.2))));
        }
        all.add(fault(
                "pads", "worn", h -> rubbed(Changed.pads(h, WORN), s -> new Spread(WORN * s.mean(), s.deviation()))));
        for (Finger finger : hand.fingers()) {
            all.add(fault(finger.name() + ": tendon", "cut", h -> Changed.cut(h, finger.name())));
        }
    }

    private static Finger springOff(Finger finger, double factor) {
        return Changed.joints(finger, 0, j -> Changed.spring(j, factor));
    }

    private static DesignChange fault(String quantity, String change, UnaryOperator<Hand> applied) {
        return new DesignChange(quantity, change, Kind.FAULT, applied);
    }
}
