package gripwright.files;

import java.util.LinkedHashMap;
import java.util.Map;

/** JSON Schemas (draft 2020-12) of the project files, made from the same tables that read them. */
public final class Schemas {
    private static final String DRAFT = "https://json-schema.org/draft/2020-12/schema";

    private Schemas() {}

    /** Schema of hand.yaml. */
    public static String hand() {
        return schema(ProjectReader.HAND, HandKeys.HAND);
    }

    /** Schema of need.yaml. */
    public static String need() {
        return schema(ProjectReader.NEED, NeedKeys.NEED);
    }

    /** Schema of pads.yaml. */
    public static String pads() {
        return schema(ProjectReader.PADS, PadKeys.FILE);
    }

    private static String schema(String file, Section<?> section) {
        Map<String, Object> definitions = new LinkedHashMap<>();
        Map<String, Object> schema = Json.object("$schema", DRAFT);
        schema.put("title", file);
        schema.putAll(section.body(definitions));
        schema.put("$defs", definitions);
        return Json.write(schema);
    }
}
