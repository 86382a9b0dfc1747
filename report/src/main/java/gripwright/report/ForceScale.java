package gripwright.report;

import gripwright.closing.ContactForce;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Forces on the object as arrows to one stated scale.
 *
 * @param arrows one per body
 * @param unitsPerNewton length of an arrow [picture units per N]
 */
record ForceScale(List<Arrow> arrows, double unitsPerNewton) {
    /** A force [N] that acts at a point [m]. */
    record Arrow(String body, Vec3 point, Vec3 force) {}

    static ForceScale of(Map<String, List<ContactForce>> byBody, double longest) {
        List<Arrow> arrows = new ArrayList<>();
        for (Map.Entry<String, List<ContactForce>> entry : byBody.entrySet()) {
            Vec3 force = Vec3.ZERO;
            Vec3 place = Vec3.ZERO;
            double weight = 0;
            for (ContactForce c : entry.getValue()) {
                force = force.plus(c.normal().times(c.normalForce())).plus(c.tangentialForce());
                place = place.plus(c.point().times(c.normalForce()));
                weight += c.normalForce();
            }
            if (weight > 1e-6) {
                arrows.add(new Arrow(entry.getKey(), place.times(1 / weight), force));
            }
        }
        double most = arrows.stream().mapToDouble(a -> a.force.length()).max().orElse(0);
        return new ForceScale(arrows, most > 0 ? longest / most : 0);
    }

    boolean isEmpty() {
        return arrows.isEmpty() || unitsPerNewton == 0;
    }

    /** A round force for the legend [N]. */
    double round() {
        return Num.nice(46 / unitsPerNewton);
    }

    /** Each arrow ends at the place where it presses. */
    void draw(Svg svg, View.Scaled view) {
        for (Arrow a : arrows) {
            Svg.P tip = view.at(a.point);
            double dx = unitsPerNewton * view.view().right.dot(a.force);
            double dy = -unitsPerNewton * view.view().up.dot(a.force);
            svg.force(tip.plus(-dx, -dy), tip);
        }
    }
}
