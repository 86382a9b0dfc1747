package gripwright.files;

import gripwright.files.Key.Presence;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The reference page of every key, in Markdown, made from the same tables that read the files. */
public final class KeyPage {
    private KeyPage() {}

    public static String text() {
        StringBuilder page = new StringBuilder();
        page.append("# Every key of a project folder\n\n");
        page.append("Made from the tables that read the files; do not edit by hand. Quantities are text with a unit"
                + " (`62 mm`, `0.12 N*m/rad`). `0.7 +- 0.15` is a value with one standard deviation; `12 mm sd` is a"
                + " scatter about 0 by its standard deviation, `12 mm uniform` by its half width. Every default used is"
                + " listed in the output.\n");
        for (Section<?> file : new Section<?>[] {HandKeys.HAND, NeedKeys.NEED, PadKeys.FILE}) {
            Set<Section<?>> sections = new LinkedHashSet<>();
            gather(file, sections);
            String name = file == HandKeys.HAND
                    ? ProjectReader.HAND
                    : file == NeedKeys.NEED ? ProjectReader.NEED : ProjectReader.PADS;
            page.append("\n## ").append(name).append('\n');
            sections.forEach(section -> append(section, page));
        }
        return page.toString();
    }

    private static void gather(Section<?> section, Set<Section<?>> sections) {
        if (sections.add(section)) {
            section.keys().forEach(key -> key.kind().sections().forEach(inner -> gather(inner, sections)));
        }
    }

    private static void append(Section<?> section, StringBuilder page) {
        page.append("\n### ")
                .append(section.id())
                .append("\n\n")
                .append(section.says())
                .append("\n\n");
        section.choices()
                .forEach(choice -> page.append("Exactly one of `")
                        .append(String.join(
                                "`, `", choice.stream().map(Key::name).toList()))
                        .append("` is given.\n\n"));
        page.append("| Key | Meaning | Value | If not given |\n|---|---|---|---|\n");
        for (Key<?> key : section.keys()) {
            page.append("| `").append(key.name()).append("` | ").append(cell(key.says()));
            page.append(" | ").append(cell(value(key)));
            page.append(" | ").append(cell(absent(section, key))).append(" |\n");
        }
    }

    private static String value(Key<?> key) {
        List<Section<?>> inner = key.kind().sections();
        if (key.kind() instanceof Section<?> section) {
            return "a block [" + section.id() + "](#" + section.id() + ")";
        }
        return inner.isEmpty()
                ? key.kind().words()
                : key.kind().words() + ", each a block [" + inner.get(0).id() + "](#"
                        + inner.get(0).id() + ")";
    }

    private static String absent(Section<?> section, Key<?> key) {
        if (key.presence() instanceof Presence.Default byDefault) {
            return "`" + byDefault.text() + "`: " + byDefault.why();
        }
        if (key.presence() instanceof Presence.Absent absent) {
            boolean choice = section.choices().stream().anyMatch(c -> c.contains(key));
            return absent.meaning() != null ? absent.meaning() : choice ? "another one is" : "nothing";
        }
        return "required";
    }

    private static String cell(String text) {
        return text.replace("|", "\\|");
    }
}
