package gripwright.report;

import gripwright.model.GraspObject;
import gripwright.model.Need;
import gripwright.model.Scatter;
import gripwright.model.Spread;
import java.util.ArrayList;
import java.util.List;

/** What must be picked up. */
final class HtmlNeed {
    private HtmlNeed() {}

    static String section(Need need) {
        Html page = new Html();
        page.say(need.objects().size() + " objects on a surface with friction " + spread(need.tableFriction())
                + ". Their placement scatters by " + scatter(need.placement().x(), false) + " along x and "
                + scatter(need.placement().y(), false) + " along y of its place, turned by "
                + scatter(need.placement().turn(), true) + ", with the hand "
                + scatter(need.placement().height(), false)
                + " off in height. It is lifted " + Num.mm(need.lift()) + " and moved with up to "
                + Num.unit(Num.text(need.acceleration(), 2), "m/s\u00b2") + "; " + Num.percent(need.wantedSuccess())
                + " of the pick-ups must work.");
        page.figure(ObjectPicture.draw(need));
        List<List<String>> rows = new ArrayList<>();
        for (GraspObject o : need.objects()) {
            rows.add(List.of(
                    o.name(),
                    Num.grams(o.mass())
                            + (o.massSpread().deviation() > 0
                                    ? " \u00b1 " + Num.grams(o.massSpread().deviation())
                                    : ""),
                    o.surface(),
                    squeeze(o),
                    String.join(", ", o.grips()),
                    Num.text(o.weight(), 2)));
        }
        page.table(
                "The objects in numbers (\u00b1 is one standard deviation)",
                List.of("object", "#mass", "surface", "squeeze at most", "grips tried", "#weight"),
                rows);
        return page.done();
    }

    private static String squeeze(GraspObject o) {
        List<String> limits = new ArrayList<>();
        if (o.squeezeForce().isPresent()) {
            limits.add(Num.newtons(o.squeezeForce().getAsDouble()));
        }
        if (o.squeezePressure().isPresent()) {
            limits.add(Num.unit(Num.digits(o.squeezePressure().getAsDouble() / 1e3, 3), "kPa"));
        }
        return limits.isEmpty() ? "no limit" : String.join(", ", limits);
    }

    static String spread(Spread s) {
        return Num.digits(s.mean(), 3) + (s.deviation() > 0 ? " \u00b1 " + Num.digits(s.deviation(), 2) : "");
    }

    private static String scatter(Scatter s, boolean angle) {
        String size = angle ? Num.degrees(s.size()) : Num.mm(s.size());
        return size + (s.law() == Scatter.Law.NORMAL ? " (one standard deviation)" : " (half width, uniform)");
    }
}
