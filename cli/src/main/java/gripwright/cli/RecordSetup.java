package gripwright.cli;

import gripwright.record.Layout;
import gripwright.record.LogFormat;
import java.util.List;
import java.util.Map;

/** What the project says about the readings of its pads. */
record RecordSetup(Layout layout, LogFormat.Heading heading) {
    static RecordSetup of(OpenProject open) {
        return new RecordSetup(
                Layout.UNKNOWN,
                new LogFormat.Heading(
                        open.project().need().name(), open.project().hand().name(), List.of(), Map.of()));
    }
}
