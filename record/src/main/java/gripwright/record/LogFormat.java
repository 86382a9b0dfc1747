package gripwright.record;

import gripwright.files.LogMarks;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The head of a log; docs/logs.md says what it means. */
public final class LogFormat {
    static final String MAGIC = LogMarks.FIRST_LINE;
    static final String OWN_COLUMNS = LogMarks.OWN_COLUMNS;

    /** Arrival and wall. */
    static final int OWN = 2;

    private static final DateTimeFormatter STARTED = DateTimeFormatter.ofPattern(
                    "uuuu-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    private LogFormat() {}

    static String started(long wallMillis) {
        return STARTED.format(Instant.ofEpochMilli(wallMillis));
    }

    /** All lines before the first reading, the line of names last. */
    static List<String> head(Heading heading, String source, long startedWallMillis, Columns columns) {
        List<String> lines = new ArrayList<>();
        lines.add(MAGIC);
        lines.add("# project: " + word(heading.project()));
        lines.add("# hand: " + word(heading.hand()));
        lines.add("# pads: " + (heading.pads().isEmpty() ? "none" : word(String.join(", ", heading.pads()))));
        lines.add("# source: " + word(source));
        lines.add("# started: " + started(startedWallMillis));
        lines.add("# clock: arrival in seconds since the start (monotonic), wall is UTC milliseconds");
        StringBuilder units = new StringBuilder("# units: arrival s, wall ms");
        for (String name : columns.names()) {
            String unit = unit(heading.units(), name);
            if (!unit.isEmpty()) {
                units.append(", ").append(word(name)).append(' ').append(unit);
            }
        }
        lines.add(units.toString());
        lines.add(names(columns));
        return lines;
    }

    private static String unit(Map<String, String> units, String name) {
        return units.getOrDefault(name, "");
    }

    static String names(Columns columns) {
        StringBuilder line = new StringBuilder(OWN_COLUMNS);
        for (int i = 0; i < columns.names().size(); i++) {
            line.append(i == 0 ? "" : ",").append(quoted(columns.names().get(i)));
        }
        return line.toString();
    }

    /** As one field of CSV. */
    static String quoted(String text) {
        boolean plain = text.indexOf(',') < 0 && text.indexOf('"') < 0;
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }

    /** Seconds with six decimals, exactly, the same in every locale. */
    static void seconds(StringBuilder to, long micros) {
        to.append(micros / 1_000_000).append('.');
        String rest = Long.toString(micros % 1_000_000);
        to.append("0".repeat(6 - rest.length())).append(rest);
    }

    private static String word(String text) {
        return text.replaceAll("[\\p{Cntrl}]", " ").strip();
    }

    /**
     * What the head says beside the columns.
     *
     * @param pads names of the sensing pads
     * @param units by column; columns without an entry have none
     */
    public record Heading(String project, String hand, List<String> pads, Map<String, String> units) {
        public Heading {
            pads = List.copyOf(pads);
            units = Map.copyOf(units);
        }
    }
}
