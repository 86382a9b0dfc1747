package gripwright.files;

import java.nio.file.Path;

/** By what the logs of a recording and their side files are told; docs/logs.md says what they hold. */
public final class LogMarks {
    /** First line of a log. */
    public static final String FIRST_LINE = "# gripwright log 1";

    /** The columns in front of the source's own: arrival [s] and the machine's clock [ms]. */
    public static final String OWN_COLUMNS = "arrival,wall,";

    /** First line of a side file. */
    public static final String SIDE_COLUMNS = "line,arrival,bytes,reason,text";

    /** Reasons in a side file that are no fault of their line. */
    public static final String COMMENT = "a comment of the source";

    public static final String NAMES_AGAIN = "the names again: the source has started anew";

    /** Ends of the names of logs and side files. */
    public static final String ENDING = ".csv";

    public static final String SIDE_ENDING = ".bad.csv";

    private LogMarks() {}

    /** The side file of a log. */
    public static Path sideFile(Path log) {
        String name = String.valueOf(log.getFileName());
        String stem = name.endsWith(ENDING) ? name.substring(0, name.length() - ENDING.length()) : name;
        return log.resolveSibling(stem + SIDE_ENDING);
    }
}
