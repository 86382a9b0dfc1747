package gripwright.files.json;

import gripwright.model.Project;
import java.util.List;

/**
 * What a result was made from, so that a stale result can be recognised: it is stale if the folder's hash is another.
 *
 * @param version of Gripwright
 * @param inputs SHA-256 over names and contents of the project's files, hexadecimal
 * @param hand and
 * @param need names, as in the files
 * @param assumptions everything the files do not say
 */
public record Origin(String version, String inputs, String hand, String need, List<Project.Assumption> assumptions) {
    public Origin {
        assumptions = List.copyOf(assumptions);
    }

    /** The head of every result. */
    void write(JsonText json, String kind) {
        json.text("kind", "gripwright " + kind + " 1")
                .text("gripwright", version)
                .text("inputs_sha256", inputs)
                .text("hand", hand)
                .text("need", need);
    }

    void writeAssumptions(JsonText json) {
        json.objects(
                "assumptions",
                assumptions,
                (j, assumption) -> j.text("where", assumption.where()).text("text", assumption.text()));
    }
}
