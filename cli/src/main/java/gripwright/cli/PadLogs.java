package gripwright.cli;

import gripwright.files.LogFault;
import gripwright.files.ProjectReader;
import gripwright.pad.PadSetup;
import gripwright.pad.Readings;
import java.io.IOException;
import java.nio.file.Path;

/** What the commands on logs have in common. */
final class PadLogs {
    private PadLogs() {}

    static Readings readings(OpenProject open, PadSetup setup) {
        return setup.readings()
                .orElseThrow(() -> new CommandFailure(
                        Exit.USAGE,
                        open.given() + "/" + ProjectReader.PADS
                                + " does not say which column of a log holds what; add a"
                                + " block `readings` (docs/keys.md), such as readings: {time: t, taxels: {PAD: [p00, p01]},"
                                + " unit: Pa, force: F}"));
    }

    /** Something that reads a log. */
    interface Use<T> {
        T run() throws IOException;
    }

    /** Runs it; faults of the log and of the file system become words. */
    static <T> T reading(Path given, Use<T> use) {
        try {
            return use.run();
        } catch (LogFault e) {
            throw new CommandFailure(Exit.FAULTS, String.valueOf(e.getMessage()), e);
        } catch (IOException e) {
            throw new CommandFailure(Exit.FILES, "cannot read " + given + ": " + ResultFile.reason(e), e);
        }
    }
}
