package gripwright.report;

import gripwright.model.Finger;
import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Joint;
import gripwright.model.Motor;
import gripwright.model.Phalanx;
import gripwright.model.Rubber;
import gripwright.model.Spool;
import gripwright.model.Transmission;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The hand in a picture and in tables. */
final class HtmlHand {
    private HtmlHand() {}

    static String section(Hand hand) {
        Html page = new Html();
        page.say(hand.name() + ": " + counted(hand.fingers().size(), "finger") + ", "
                + counted(hand.motors().size(), "motor") + ". " + drives(hand));
        page.figure(HandPicture.draw(hand));
        page.table(
                "The phalanges and their joints",
                List.of(
                        "phalanx",
                        "#length",
                        "#width",
                        "#bone",
                        "pad (length \u00d7 thickness, rubber)",
                        "joint",
                        "#rate, N\u00b7m/rad",
                        "#rest",
                        "stops",
                        "#tendon arm"),
                phalanges(hand));
        page.table(
                "Grips", List.of("grip", "approach", "where the palm stops", "bases turned", "fingers"), grips(hand));
        page.table("Rubbers", List.of("rubber", "#modulus", "where it comes from"), rubbers(hand));
        page.table("Friction of rubber on surfaces", List.of("rubber", "surface", "#coefficient"), friction(hand));
        page.small("Bare bone on any object: " + HtmlNeed.spread(hand.friction().bone()) + ". "
                + hand.arm()
                        .map(a -> "Arm stiffness at the palm "
                                + newtonsPerMm(a.stiffness().x()) + ", "
                                + newtonsPerMm(a.stiffness().y()) + " and "
                                + newtonsPerMm(a.stiffness().z()) + " along x, y and z; "
                                + perRadian(a.turning().x()) + ", "
                                + perRadian(a.turning().y()) + " and "
                                + perRadian(a.turning().z()) + " about them.")
                        .orElse("The arm is taken as rigid."));
        return page.done();
    }

    static String counted(int n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }

    private static String newtonsPerMm(double newtonsPerMetre) {
        return Num.unit(Num.digits(newtonsPerMetre / 1e3, 3), "N/mm");
    }

    private static String perRadian(double rate) {
        return Num.unit(Num.digits(rate, 3), "N\u00b7m/rad");
    }

    private static String drives(Hand hand) {
        return hand.motors().stream().map(HtmlHand::drive).collect(Collectors.joining(" "));
    }

    private static String drive(Motor m) {
        return "Motor " + m.name() + " pulls at most " + Num.newtons(m.greatestTension()) + " on "
                + tree(m.pulls()) + "; tendon " + newtonsPerMm(m.tendonStiffness()) + ", friction in its sheath "
                + Num.digits(m.sheathFriction(), 3) + "; "
                + (m.whenOff() == Motor.WhenOff.LOCKED
                        ? "it keeps its length when switched off."
                        : "it must stay powered to hold.");
    }

    private static String tree(Transmission t) {
        if (t instanceof FingerTendon leaf) {
            return leaf.finger();
        }
        if (t instanceof Floating floating) {
            return "a floating differential (" + branches(floating.branches()) + ")";
        }
        return "a common spool (" + branches(((Spool) t).branches()) + ")";
    }

    private static String branches(List<Transmission.Branch> branches) {
        return branches.stream()
                .map(b -> Num.digits(b.ratio(), 3) + " to " + tree(b.to()))
                .collect(Collectors.joining(", "));
    }

    /** One row per phalanx; fingers made alike share their rows. */
    private static List<List<String>> phalanges(Hand hand) {
        List<List<String>> rows = new ArrayList<>();
        Map<List<Object>, List<Finger>> alike = new LinkedHashMap<>();
        for (Finger f : hand.fingers()) {
            alike.computeIfAbsent(List.of(f.phalanges(), f.joints()), k -> new ArrayList<>())
                    .add(f);
        }
        for (List<Finger> group : alike.values()) {
            String names = group.stream().map(Finger::name).collect(Collectors.joining(", "));
            Finger f = group.get(0);
            for (int i = 0; i < f.phalanges().size(); i++) {
                Phalanx p = f.phalanges().get(i);
                Joint j = f.joints().get(i);
                rows.add(List.of(
                        names + "\u00a0" + (i + 1),
                        Num.mm(p.length()),
                        Num.mm(p.width()),
                        Num.mm(p.bone()),
                        Num.millimetres(p.pad().length()) + " \u00d7 "
                                + Num.mm(p.pad().thickness()) + ", "
                                + p.pad().rubber().name() + (p.tip() == Phalanx.Tip.ROUND ? ", round tip" : ""),
                        j.kind().origin(),
                        Num.digits(j.kind().bendingRate(), 3),
                        Num.degrees(j.rest()),
                        Num.degrees(j.lower()) + " to\u00a0" + Num.degrees(j.upper()),
                        Num.mm(j.momentArm())));
            }
        }
        return rows;
    }

    private static List<List<String>> grips(Hand hand) {
        List<List<String>> rows = new ArrayList<>();
        for (Grip g : hand.grips()) {
            String turned = new TreeMap<>(g.turned())
                    .entrySet().stream()
                            .map(e -> e.getKey() + " " + Num.degrees(e.getValue()))
                            .collect(Collectors.joining(", "));
            rows.add(List.of(
                    g.name(),
                    (g.approach() == Grip.Approach.ABOVE ? "from above" : "from the side")
                            + (g.tilt() == 0 ? "" : ", tilted " + Num.degrees(g.tilt())),
                    stand(g.stand()),
                    turned.isEmpty() ? "none" : turned,
                    String.join(", ", g.fingers())));
        }
        return rows;
    }

    private static String stand(Grip.Stand stand) {
        if (stand instanceof Grip.TipsAboveTable tips) {
            return "lowest tip " + Num.mm(tips.gap()) + " above the table";
        }
        Grip.PalmToObject palm = (Grip.PalmToObject) stand;
        return "pad " + Num.mm(palm.gap()) + " from the object"
                + (Double.isNaN(palm.heightAboveTable())
                        ? ""
                        : ", " + Num.mm(palm.heightAboveTable()) + " above the table");
    }

    private static List<List<String>> rubbers(Hand hand) {
        Set<Rubber> seen = new LinkedHashSet<>();
        seen.add(hand.palm().pad().rubber());
        hand.fingers().forEach(f -> f.phalanges().forEach(p -> seen.add(p.pad().rubber())));
        return seen.stream()
                .map(r -> List.of(r.name(), Num.unit(Num.digits(r.modulus() / 1e6, 3), "MPa"), r.origin()))
                .toList();
    }

    private static List<List<String>> friction(Hand hand) {
        List<List<String>> rows = new ArrayList<>();
        new TreeMap<>(hand.friction().byRubber())
                .forEach((rubber, surfaces) -> new TreeMap<>(surfaces)
                        .forEach((surface, mu) -> rows.add(List.of(rubber, surface, HtmlNeed.spread(mu)))));
        return rows;
    }
}
