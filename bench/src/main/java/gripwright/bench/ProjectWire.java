package gripwright.bench;

import gripwright.closing.Outcome;
import gripwright.files.Tables;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Need;
import gripwright.model.Project;
import gripwright.model.Scatter;
import gripwright.model.SharedAssumption;
import gripwright.report.PageLook;
import java.util.ArrayList;
import java.util.List;

/** What the page shows of a project before anything is computed. */
final class ProjectWire {
    private ProjectWire() {}

    static String of(Desk desk, String version) {
        Desk.State state = desk.state();
        Project project = state.project();
        if (project == null) {
            return Wire.object(
                    "version", version, "revision", state.revision(), "faults", state.faults(), "folder", name(desk));
        }
        Need need = project.need();
        return Wire.object(
                "version", version,
                "revision", state.revision(),
                "faults", "",
                "folder", name(desk),
                "hand", project.hand().name(),
                "need", need.name(),
                "fingers", project.hand().fingers().stream().map(f -> f.name()).toList(),
                "joints", joints(project),
                "motors", project.hand().motors().stream().map(m -> m.name()).toList(),
                "greatestTension",
                        Wire.number(
                                project.hand().motors().stream()
                                        .mapToDouble(m -> m.greatestTension())
                                        .max()
                                        .orElse(0),
                                2),
                "bodies", SolidWire.hand(project.hand()),
                "grips", project.hand().grips().stream().map(ProjectWire::grip).toList(),
                "objects", need.objects().stream().map(ProjectWire::object).toList(),
                "scatter",
                        Wire.raw(
                                "x", scatter(need.placement().x(), 1e3),
                                "y", scatter(need.placement().y(), 1e3),
                                "turn", scatter(need.placement().turn(), 180 / Math.PI)),
                "wanted", need.wantedSuccess(),
                "outcomes", outcomes(),
                "values", desk.values(),
                "undos", desk.undos(),
                "redos", desk.redos(),
                "parquet", Tables.parquet(),
                "assumptions",
                        SharedAssumption.of(project.assumptions()).stream()
                                .map(a -> List.of(a.where(), a.text()))
                                .toList());
    }

    private static String name(Desk desk) {
        return String.valueOf(desk.folder().toAbsolutePath().normalize().getFileName());
    }

    private static List<String> joints(Project project) {
        List<String> names = new ArrayList<>();
        project.hand().fingers().forEach(finger -> {
            for (int i = 0; i < finger.joints().size(); i++) {
                names.add(finger.name() + " " + (i + 1));
            }
        });
        return names;
    }

    private static Wire.Raw grip(Grip grip) {
        return Wire.raw(
                "name", grip.name(), "above", grip.approach() == Grip.Approach.ABOVE, "fingers", grip.fingers());
    }

    private static Wire.Raw object(GraspObject o) {
        String squeeze = o.squeezeForce().isPresent()
                ? Wire.number(o.squeezeForce().getAsDouble(), 2).json() + " N"
                : o.squeezePressure().isPresent()
                        ? Wire.number(o.squeezePressure().getAsDouble() / 1e3, 2)
                                        .json() + " kPa"
                        : "";
        return Wire.raw(
                "name", o.name(),
                "surface", o.surface(),
                "mass", Wire.number(1e3 * o.mass(), 1).json() + " g",
                "squeeze", squeeze,
                "stands", "upright", // unless the file says otherwise, which the page shows first
                "weight", o.weight(),
                "grips", o.grips(),
                "parts", SolidWire.shape(o.shape()));
    }

    private static List<Object> scatter(Scatter scatter, double unit) {
        return List.of(Wire.number(unit * scatter.size(), 2), scatter.law() == Scatter.Law.NORMAL ? "sd" : "uniform");
    }

    private static List<List<String>> outcomes() {
        List<List<String>> out = new ArrayList<>();
        for (Outcome o : PageLook.order()) {
            out.add(List.of(PageLook.key(o), o.words()));
        }
        return out;
    }
}
