package gripwright.cli;

import gripwright.files.ProjectReader;
import gripwright.pad.PadDesign;
import gripwright.pad.PadSetup;
import gripwright.pad.Readings;
import gripwright.record.LogFormat;
import gripwright.signal.Layout;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What pads.yaml says about the readings of the pads. */
record RecordSetup(Layout layout, LogFormat.Heading heading) {
    static RecordSetup of(OpenProject open) {
        Optional<PadSetup> pads = ProjectReader.readMarked(open.folder()).pads();
        Optional<Readings> readings = pads.flatMap(PadSetup::readings);
        return new RecordSetup(
                readings.map(r -> Layout.of(r, pads.orElseThrow().pads())).orElse(Layout.UNKNOWN),
                new LogFormat.Heading(
                        open.project().need().name(),
                        open.project().hand().name(),
                        pads.map(p -> p.pads().stream().map(PadDesign::name).toList())
                                .orElse(List.of()),
                        readings.map(RecordSetup::units).orElse(Map.of())));
    }

    private static Map<String, String> units(Readings r) {
        Map<String, String> units = new LinkedHashMap<>();
        units.put(r.time(), tick(r.tick()));
        r.taxelColumns().forEach(column -> units.put(column, r.unit().symbol()));
        r.temperature().values().forEach(column -> units.put(column, "degC"));
        boolean counts = r.unit() == Readings.Scale.COUNTS;
        r.ambient()
                .ifPresent(column -> units.put(
                        column, counts ? Readings.Scale.PA.symbol() : r.unit().symbol()));
        r.force().ifPresent(column -> units.put(column, "N"));
        r.forceTime().ifPresent(clock -> units.put(clock.column(), tick(clock.tick())));
        return units;
    }

    private static String tick(double seconds) {
        return seconds == 1 ? "s" : seconds == 1e-3 ? "ms" : seconds == 1e-6 ? "us" : "ns";
    }
}
