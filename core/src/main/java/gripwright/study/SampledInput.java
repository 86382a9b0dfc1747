package gripwright.study;

import gripwright.closing.Conditions;
import gripwright.model.GraspObject;
import gripwright.model.Project;
import gripwright.model.Spread;
import java.util.Collection;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/** What trials vary from run to run. The words are those of tables and files, and the keys of the random streams. */
public enum SampledInput {
    X("x", "mm", 1e3, Conditions::x),
    Y("y", "mm", 1e3, Conditions::y),
    TURN("turn", "deg", 180 / Math.PI, Conditions::turn),
    HEIGHT("height", "mm", 1e3, Conditions::height),
    PAD_FRICTION("pad friction", "standard deviations", 1, Conditions::padFriction),
    TABLE_FRICTION("table friction", "standard deviations", 1, Conditions::tableFriction),
    MASS("mass", "standard deviations", 1, Conditions::mass),
    PAD_STIFFNESS("pad stiffness", "%", 100, c -> c.padStiffness() - 1),
    SPRING_RATE("spring rate", "%", 100, c -> c.springRate() - 1);

    private final String words;
    private final String unit;
    private final double perUnit;
    // Only ever a reference to a getter, which holds no state.
    @SuppressWarnings("ImmutableEnumChecker")
    private final ToDoubleFunction<Conditions> deviation;

    SampledInput(String words, String unit, double perUnit, ToDoubleFunction<Conditions> deviation) {
        this.words = words;
        this.unit = unit;
        this.perUnit = perUnit;
        this.deviation = deviation;
    }

    public String words() {
        return words;
    }

    /** The unit in which people read the deviation. */
    public String unit() {
        return unit;
    }

    /** Deviation in the unit of {@link #unit} for 1 of the core's own. */
    double perUnit() {
        return perUnit;
    }

    /** Deviation from nominal: [m], [rad], [standard deviations], or [-] as a share of the nominal value. */
    public double deviation(Conditions conditions) {
        return deviation.applyAsDouble(conditions);
    }

    /** The input of those words. */
    static SampledInput of(String words) {
        return Stream.of(values())
                .filter(input -> input.words.equals(words))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no sampled input is called '" + words + "'"));
    }

    /** False if the project states this input to be exact for the object, so that it cannot matter. */
    boolean varies(Project project, GraspObject object, Variation variation) {
        var need = project.need();
        return switch (this) {
            case X -> need.placement().x().size() > 0;
            case Y -> need.placement().y().size() > 0;
            case TURN -> need.placement().turn().size() > 0;
            case HEIGHT -> need.placement().height().size() > 0;
            case PAD_FRICTION -> padFrictionVaries(project, object);
            case TABLE_FRICTION -> need.tableFriction().deviation() > 0;
            case MASS -> object.massSpread().deviation() > 0;
            case PAD_STIFFNESS -> variation.padStiffness() > 0;
            case SPRING_RATE -> variation.springRate() > 0;
        };
    }

    private static boolean padFrictionVaries(Project project, GraspObject object) {
        var friction = project.hand().friction();
        Collection<String> rubbers = friction.byRubber().keySet();
        Stream<Spread> ofSurface = rubbers.stream().flatMap(rubber -> friction.of(rubber, object.surface()).stream());
        return Stream.concat(ofSurface, Stream.of(friction.bone())).anyMatch(spread -> spread.deviation() > 0);
    }
}
