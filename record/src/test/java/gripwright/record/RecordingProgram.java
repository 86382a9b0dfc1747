package gripwright.record;

import gripwright.files.Recording;
import gripwright.signal.Layout;
import java.nio.file.Path;

/** A recording as a program of its own, to be killed: source, log. Says how many readings it has written so far. */
final class RecordingProgram {
    private RecordingProgram() {}

    public static void main(String[] args) throws Exception {
        SourceAddress from = SourceAddress.of(args[0]);
        Path log = Path.of(args[1]);
        try {
            Recorder.check(log);
        } catch (LogFailure e) {
            System.out.println("refused " + e.getMessage());
            return;
        }
        Recording r = Recorder.run(
                Fake.plan(log, Layout.UNKNOWN, from), Sources.open(from, Path.of("")), Clocks.REAL, live -> {
                    System.out.println("written " + live.soFar().counts().readings());
                    System.out.flush();
                    return true;
                });
        System.out.println("readings " + r.counts().readings() + " unsaved "
                + r.counts().unsaved() + " waiting " + r.times().mostWaiting());
        System.out.println("end " + r.end() + ": " + r.endWords());
    }
}
