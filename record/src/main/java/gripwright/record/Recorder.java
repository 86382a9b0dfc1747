package gripwright.record;

import gripwright.files.Recording;
import gripwright.signal.Layout;
import gripwright.signal.TaxelWatch;
import java.nio.file.Path;

/** Records: from the bytes of a source to the log, its side file and the counts. */
public final class Recorder {
    /** Of a longer line only so many bytes are kept, in the side file; with times in front it stays below 64 KiB. */
    public static final int LONGEST_LINE = 65_000;

    /** Nothing for so long is called a silence [s]. */
    public static final double SILENCE = TaxelWatch.SILENCE;

    private Recorder() {}

    /**
     * What is to be done.
     *
     * @param log file to write
     * @param logName the same as the user would write it
     * @param sourceText {@code --from} as given
     * @param lines readings after which it ends
     * @param seconds after which it ends
     */
    public record Plan(
            Path log,
            String logName,
            SourceAddress source,
            String sourceText,
            Layout layout,
            LogFormat.Heading heading,
            long lines,
            double seconds) {}

    /** Looks on, about ten times a second, in the thread of the recording. */
    public interface Watcher {
        /** False ends the recording; what has arrived is written. */
        boolean goOn(Live live);
    }

    /** Refuses a log that cannot be written or gone on with, before a source is opened. */
    public static void check(Path log) throws LogFailure {
        LogFile.check(log);
    }

    /**
     * Records until the source ends, a limit is reached, or the watcher has enough; closes the source. Whatever fails
     * after the start is said in the result.
     */
    public static Recording run(Plan plan, Source source, Clocks clocks, Watcher watcher) {
        return new Session(plan, clocks, watcher).record(source);
    }
}
