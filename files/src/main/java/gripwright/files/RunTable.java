package gripwright.files;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingRunner;
import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.files.DataTable.Column;
import gripwright.files.DataTable.Kind;
import gripwright.model.Need;
import gripwright.study.RunnerFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Every run of a study as a row of a table: what was tried and how it ended. It listens to the closings on their way from
 * the factory to the study.
 */
public final class RunTable {
    private record Run(String object, String grip, Conditions conditions, ClosingSummary summary) {}

    private final List<Run> runs = new ArrayList<>();

    /** The same closings, each noted here; for any number of threads. */
    public RunnerFactory through(RunnerFactory factory) {
        return (object, grip) -> {
            ClosingRunner runner = factory.create(object, grip);
            return new ClosingRunner() {
                @Override
                public ClosingSummary run(Conditions conditions) {
                    ClosingSummary summary = runner.run(conditions);
                    note(new Run(object.name(), grip.name(), conditions, summary));
                    return summary;
                }

                @Override
                public ClosingDetail detail(Conditions conditions) {
                    return runner.detail(conditions);
                }
            };
        };
    }

    private synchronized void note(Run run) {
        runs.add(run);
    }

    /** The runs so far, in an order that does not depend on threads: objects as in the need, then grip and conditions. */
    public synchronized DataTable table(Need need) {
        List<String> objects = need.objects().stream().map(o -> o.name()).toList();
        List<Run> sorted = new ArrayList<>(runs);
        sorted.sort(Comparator.<Run>comparingInt(r -> objects.indexOf(r.object))
                .thenComparing(Run::grip)
                .thenComparingDouble(r -> r.conditions.x())
                .thenComparingDouble(r -> r.conditions.y())
                .thenComparingDouble(r -> r.conditions.turn())
                .thenComparing(r -> r.conditions.toString()));
        return new DataTable(COLUMNS, sorted.stream().map(RunTable::row).toList());
    }

    private static final List<Column> COLUMNS = List.of(
            new Column("object", Kind.TEXT),
            new Column("grip", Kind.TEXT),
            new Column("x_m", Kind.NUMBER),
            new Column("y_m", Kind.NUMBER),
            new Column("turn_rad", Kind.NUMBER),
            new Column("height_m", Kind.NUMBER),
            new Column("pad_friction_sd", Kind.NUMBER),
            new Column("table_friction_sd", Kind.NUMBER),
            new Column("mass_sd", Kind.NUMBER),
            new Column("pad_stiffness", Kind.NUMBER),
            new Column("spring_rate", Kind.NUMBER),
            new Column("outcome", Kind.TEXT),
            new Column("held", Kind.TRUTH),
            new Column("travel_m", Kind.NUMBER),
            new Column("travel_x_m", Kind.NUMBER),
            new Column("travel_y_m", Kind.NUMBER),
            new Column("tilt_rad", Kind.NUMBER),
            new Column("sink_m", Kind.NUMBER),
            new Column("landing_force_N", Kind.NUMBER),
            new Column("peak_force_N", Kind.NUMBER),
            new Column("peak_pressure_Pa", Kind.NUMBER),
            new Column("links", Kind.WHOLE),
            new Column("object_residual_N", Kind.NUMBER),
            new Column("joint_residual_Nm", Kind.NUMBER),
            new Column("steps", Kind.WHOLE),
            new Column("iterations", Kind.WHOLE));

    private static List<@Nullable Object> row(Run run) {
        Conditions c = run.conditions;
        ClosingSummary s = run.summary;
        return Arrays.asList(
                run.object,
                run.grip,
                c.x(),
                c.y(),
                c.turn(),
                c.height(),
                c.padFriction(),
                c.tableFriction(),
                c.mass(),
                c.padStiffness(),
                c.springRate(),
                s.outcome().words(),
                s.held(),
                s.travel(),
                s.travelX(),
                s.travelY(),
                s.tilt(),
                s.sink(),
                s.landingForce(),
                s.peakForce(),
                s.peakPressure(),
                (long) s.links(),
                number(s.objectResidual()),
                number(s.jointResidual()),
                (long) s.steps(),
                (long) s.iterations());
    }

    /** No value for what is not known. */
    private static @Nullable Double number(double value) {
        return Double.isNaN(value) ? null : Double.valueOf(value);
    }
}
