package gripwright.files;

import java.util.List;
import java.util.Optional;

/**
 * What one recording brought: counts, times and a coarse trace of every taxel. The log itself is a file.
 *
 * @param log as the user would name it, empty if none was written because nothing came
 * @param sideFile with the lines that are no readings, empty if there are none
 * @param source as given
 * @param started UTC, ISO 8601
 * @param columns of the log, those of the source
 * @param absent columns that pads.yaml names and the source does not send
 * @param continued what was found when an older log was gone on with
 * @param strips counts over time, all of the same width
 * @param taxels in the order of the layout
 * @param end why it ended
 * @param endWords the same for people, with what failed
 */
public record Recording(
        String log,
        String sideFile,
        String source,
        String started,
        List<String> columns,
        List<String> absent,
        Optional<Continued> continued,
        Counts counts,
        Times times,
        double stripSeconds,
        List<Strip> strips,
        List<Taxel> taxels,
        End end,
        String endWords) {
    /** Why a recording ended. */
    public enum End {
        SOURCE_ENDED,
        TIME_UP,
        LINES_REACHED,
        STOPPED,
        SOURCE_FAILED,
        LOG_FAILED
    }

    /**
     * Lines and readings.
     *
     * @param lines that came, of whatever kind
     * @param readings handed to the system for the log
     * @param safe of these, forced to the disk itself
     * @param unsaved readings that came but could not be written any more
     * @param malformed lines that are no reading, each in the side file
     * @param comments of the source, each in the side file
     * @param blank lines
     * @param heads lines of names after the first
     * @param gaps places where the count of the readings jumps
     * @param missing readings missing there
     * @param repeats readings whose count had come before
     * @param late readings that came after later ones
     * @param restarts new starts of the source's count
     * @param overruns of the source's counter
     * @param stampsBack readings whose own time is before that of the reading before
     * @param stampsEqual and the same
     */
    public record Counts(
            long lines,
            long readings,
            long safe,
            long unsaved,
            long malformed,
            long comments,
            long blank,
            long heads,
            long gaps,
            long missing,
            long repeats,
            long late,
            long restarts,
            long overruns,
            long stampsBack,
            long stampsEqual) {
        /** True if every reading that the source is known to have sent is in the log. */
        public boolean whole() {
            return malformed == 0 && missing == 0 && unsaved == 0;
        }
    }

    /**
     * Times.
     *
     * @param duration from the first to the last line [s]
     * @param rate readings in the log by the time from the first to the last [1/s]
     * @param silences longer than two seconds
     * @param longestSilence [s]
     * @param wallSteps steps of the machine's clock of more than half a second
     * @param mostWaiting bytes that waited for the log at most
     * @param waits how often reading had to wait for the log
     */
    public record Times(
            double duration,
            double rate,
            int silences,
            double longestSilence,
            int wallSteps,
            long mostWaiting,
            int waits) {}

    /**
     * The older log that was gone on with.
     *
     * @param readings found whole
     * @param cutBytes behind its last whole line, moved to the side file
     */
    public record Continued(long readings, long cutBytes) {}

    /** Counts within one strip of time. */
    public record Strip(long readings, long missing, long malformed) {}

    /**
     * One sensing cell.
     *
     * @param values readings that had a number
     * @param least and
     * @param greatest NaN if there was none
     * @param saturated readings at or beyond an end of its range
     * @param stuck true if it did not change for the last five seconds or more while it was read
     * @param unchanged longest time without a change [s]
     * @param low lowest value of each strip, NaN where there is none
     * @param high and highest
     */
    public record Taxel(
            String column,
            String pad,
            long values,
            double last,
            double least,
            double greatest,
            long saturated,
            boolean stuck,
            double unchanged,
            List<Float> low,
            List<Float> high) {}
}
