package gripwright.study;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.Finger;
import gripwright.model.FrictionTable;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Joint;
import gripwright.model.Need;
import gripwright.model.PadLayer;
import gripwright.model.Palm;
import gripwright.model.Phalanx;
import gripwright.model.PinJoint;
import gripwright.model.Placement;
import gripwright.model.Project;
import gripwright.model.Rubber;
import gripwright.model.Scatter;
import gripwright.model.Spread;
import gripwright.shape.Shape;
import java.lang.reflect.Proxy;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** A small project and closings whose outcome is a plain function of the conditions. */
final class Fakes {
    private Fakes() {}

    /** Ends every run as the rule says. */
    record RuleRunner(Function<Conditions, Outcome> rule) implements ClosingRunner {
        @Override
        public ClosingSummary run(Conditions conditions) {
            return summary(rule.apply(conditions));
        }

        @Override
        public ClosingDetail detail(Conditions conditions) {
            throw new UnsupportedOperationException("studies need no details");
        }
    }

    static ClosingSummary summary(Outcome outcome) {
        return new ClosingSummary(outcome, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1);
    }

    static GraspObject object(String name, double weight, String... grips) {
        return new GraspObject(
                name,
                noShape(),
                0.2,
                new Spread(0.2, 0.01),
                Vec3.ZERO,
                "glass",
                Rotation.IDENTITY,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of(grips),
                weight);
    }

    static Grip grip(String name, Grip.Approach approach) {
        return new Grip(name, approach, new Grip.TipsAboveTable(0.003), 0, Map.of(), List.of("thumb"));
    }

    static Project project(double wanted, GraspObject... objects) {
        Placement placement = new Placement(
                new Scatter(Scatter.Law.NORMAL, 0.012),
                new Scatter(Scatter.Law.NORMAL, 0.012),
                new Scatter(Scatter.Law.UNIFORM, 0.3),
                Scatter.NONE);
        Need need = new Need("bench", new Spread(0.35, 0.05), placement, 0.15, 3, wanted, List.of(objects));
        return new Project(hand(), need, List.of());
    }

    private static Hand hand() {
        PadLayer pad = new PadLayer(0.05, 0.004, new Rubber("soft", 0.7e6, "given"));
        Phalanx phalanx = new Phalanx(0.07, 0.02, 0.008, pad, Phalanx.Tip.SQUARE);
        Joint joint = new Joint(new PinJoint(0.1, OptionalDouble.empty()), 0, -0.2, 2, 0.01);
        return new Hand(
                "one finger",
                new Palm(0.09, 0.08, 0.01, pad),
                List.of(new Finger("thumb", Vec3.ZERO, 0, List.of(phalanx), List.of(joint))),
                List.of(),
                new FrictionTable(Map.of("soft", Map.of("glass", new Spread(0.9, 0.2))), Spread.exactly(0.2)),
                Optional.empty(),
                List.of(grip("wrap", Grip.Approach.SIDE), grip("top", Grip.Approach.ABOVE)));
    }

    // Studies never look at the shape.
    private static Shape noShape() {
        return (Shape) Proxy.newProxyInstance(
                Shape.class.getClassLoader(),
                new Class<?>[] {Shape.class},
                (proxy, method, arguments) -> switch (method.getName()) {
                    case "equals" -> proxy == arguments[0];
                    case "hashCode" -> 1;
                    case "toString" -> "no shape";
                    default -> throw new UnsupportedOperationException(method.getName());
                });
    }
}
