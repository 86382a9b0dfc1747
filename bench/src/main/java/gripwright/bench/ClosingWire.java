package gripwright.bench;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.ContactForce;
import gripwright.closing.Frame;
import gripwright.math.Vec3;
import gripwright.model.GraspObject;
import gripwright.report.PageLook;
import gripwright.study.Sureness;
import gripwright.study.Uncertain;
import java.util.ArrayList;
import java.util.List;

/** One closing for the browser: how it ended, and the moments on the way. */
final class ClosingWire {
    private static final int MOST_FRAMES = 110;

    private ClosingWire() {}

    /**
     * @param all false: the last moment only, for an answer while the object is still being dragged
     * @param milliseconds it took to compute
     */
    static String of(GraspObject object, String grip, ClosingDetail detail, boolean all, double milliseconds) {
        ClosingSummary s = detail.summary();
        Taxels taxels = new Taxels(detail.padPoints());
        List<Frame> frames = chosen(detail.frames(), all);
        return Wire.object(
                "object", object.name(),
                "grip", grip,
                "conditions", conditions(detail.conditions()),
                "outcome", PageLook.key(s.outcome()),
                "words", s.outcome().words(),
                "reason", detail.reason(),
                "cautions", detail.cautions(),
                "travel", Wire.number(1e3 * s.travel(), 2),
                "tilt", Wire.number(Math.toDegrees(s.tilt()), 2),
                "sink", Wire.number(1e3 * s.sink(), 2),
                "peakForce", Wire.number(s.peakForce(), 2),
                "peakPressure", Wire.number(s.peakPressure() / 1e3, 2),
                "milliseconds", Wire.number(milliseconds, 1),
                "bodies", detail.bodies(),
                "firstTouches", firstTouches(detail),
                "contacts", contacts(detail),
                "taxels", taxels.wire(),
                "complete", all,
                "frames", frames.stream().map(f -> frame(f, taxels, object)).toList());
    }

    /** How sure an answer is: counts of the ensemble, and single inputs that turn it. */
    static String sure(Sureness s) {
        return Wire.object(
                "held", s.held().successes(),
                "decided", s.held().trials(),
                "undecided", s.held().undecided(),
                "clear", s.clear(),
                "low", Wire.number(s.held().low(), 4),
                "high", Wire.number(s.held().high(), 4),
                "flips",
                        s.flips().stream()
                                .map(f -> List.of(
                                        f.input(), f.change(), f.outcome().words()))
                                .toList(),
                "rule", Uncertain.RULE);
    }

    private static Wire.Raw conditions(Conditions c) {
        return Wire.raw(
                "x", Wire.number(1e3 * c.x(), 2),
                "y", Wire.number(1e3 * c.y(), 2),
                "turn", Wire.number(Math.toDegrees(c.turn()), 2));
    }

    /** All of them, or evenly thinned; the first and the last of each phase stay. */
    private static List<Frame> chosen(List<Frame> frames, boolean all) {
        if (!all) {
            return frames.isEmpty() ? frames : frames.subList(frames.size() - 1, frames.size());
        }
        int step = (frames.size() + MOST_FRAMES - 1) / MOST_FRAMES;
        List<Frame> out = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            boolean border = i == 0
                    || i == frames.size() - 1
                    || frames.get(i).phase() != frames.get(i + 1).phase()
                    || frames.get(i).phase() != frames.get(i - 1).phase();
            if (border || i % Math.max(step, 1) == 0) {
                out.add(frames.get(i));
            }
        }
        return out;
    }

    private static Wire.Raw frame(Frame f, Taxels taxels, GraspObject object) {
        Vec3 centre = f.object().apply(object.centreOfMass());
        return Wire.raw(
                "p", f.phase().ordinal(),
                "t", Wire.number(f.tension().stream().mapToDouble(t -> t).max().orElse(0), 3),
                "q",
                        f.jointAngles().stream()
                                .map(q -> Wire.number(Math.toDegrees(q), 2))
                                .toList(),
                "b", f.bodies().stream().map(SolidWire::pose).toList(),
                "o", SolidWire.pose(f.object()),
                "c", Wire.millimetres(centre),
                "f", f.bodyForce().stream().map(n -> Wire.number(n, 2)).toList(),
                "k", taxels.pressures(f.padPressure()),
                "z", Wire.number(1e3 * f.table(), 2));
    }

    private static List<List<Object>> firstTouches(ClosingDetail detail) {
        List<List<Object>> out = new ArrayList<>();
        for (ClosingDetail.FirstTouch t : detail.firstTouches()) {
            out.add(List.of(
                    detail.bodies().get(t.body()),
                    Wire.number(t.tension(), 2),
                    t.phase().ordinal()));
        }
        return out;
    }

    /** Point [mm], force on the object [N], normal, friction and body of every contact with the object at the end. */
    private static List<List<Object>> contacts(ClosingDetail detail) {
        List<List<Object>> out = new ArrayList<>();
        for (ContactForce c : detail.contacts()) {
            if (c.other().equals("object")) {
                List<Object> one = new ArrayList<>(Wire.millimetres(c.point()));
                one.addAll(Wire.vector(c.normal().times(c.normalForce()).plus(c.tangentialForce()), 3));
                one.addAll(Wire.vector(c.normal(), 3));
                one.add(Wire.number(c.friction(), 3));
                one.add(c.body());
                out.add(one);
            }
        }
        return out;
    }
}
