package gripwright.files.json;

import gripwright.files.Fault;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import java.util.List;

/** What checking a project folder found. Schema: docs/schema/check.schema.json. */
public final class CheckJson {
    private CheckJson() {}

    /** A folder without faults. */
    public static String of(Origin origin, Project project) {
        return JsonText.of(json -> {
            origin.write(json, "check");
            json.truth("valid", true);
            json.objects("faults", List.<Fault>of(), CheckJson::fault);
            json.texts("grips", project.hand().grips().stream().map(Grip::name).toList());
            json.objects("objects", project.need().objects(), CheckJson::object);
            origin.writeAssumptions(json);
        });
    }

    /** A folder with faults: hand and need are not known. */
    public static String of(String version, String inputs, List<Fault> faults) {
        return JsonText.of(json -> json.text("kind", "gripwright check 1")
                .text("gripwright", version)
                .text("inputs_sha256", inputs)
                .truth("valid", false)
                .objects("faults", faults, CheckJson::fault));
    }

    private static void object(JsonText json, GraspObject object) {
        json.text("name", object.name())
                .number("mass_kg", object.mass())
                .number("weight_in_total", object.weight())
                .texts("grips", object.grips());
    }

    private static void fault(JsonText json, Fault fault) {
        json.text("file", fault.file())
                .whole("line", fault.line())
                .whole("column", fault.column())
                .text("source_line", fault.sourceLine())
                .text("message", fault.message())
                .text("expected", fault.expected());
        String suggestion = fault.suggestion();
        if (suggestion == null) {
            json.none("suggestion");
        } else {
            json.text("suggestion", suggestion);
        }
    }
}
