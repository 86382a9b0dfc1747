package gripwright.cli;

import gripwright.files.CalibrationFile;
import gripwright.files.PadLog;
import gripwright.files.json.CalibrationJson;
import gripwright.pad.PadSetup;
import gripwright.pad.Readings;
import gripwright.report.CalibrationPage;
import gripwright.report.CalibrationPicture;
import gripwright.signal.Calibration;
import gripwright.signal.Calibrator;
import gripwright.signal.Decoding;
import gripwright.signal.Rates;
import gripwright.signal.SensorLog;
import gripwright.signal.Taxel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** From a log beside a load cell to calibration.yaml. */
@Command(
        name = "calibrate",
        description =
                "Fit every taxel of a log against a reference force; say what is known how well, and what to recast.",
        footer = {
            "",
            "Writes calibration.yaml in DIR, which 'gripwright decode' reads, and a page of pictures. What to record:",
            "five sharp taps; a rest while the pad warms by 5 K, with a step of ambient pressure in it; three slow",
            "cycles to full force for practice and at least five to count; a rest of a minute, a hold of a minute;",
            "each taxel pressed alone; five sharp taps. What is missing is said, with the figures it costs.",
            "The exit code is 1 if a taxel is dead, swapped or to be recast.",
            "",
            "Example:",
            "  gripwright calibrate demo --log demo/logs/invented-calibration.csv.gz --reference F"
        })
final class CalibrateCommand extends ProjectCommand {
    @Option(
            names = "--log",
            required = true,
            paramLabel = "FILE",
            description =
                    "The log: CSV with a line of column names, such as 'gripwright record' writes; may be packed by"
                            + " gzip.")
    private Path file = Path.of("");

    @Option(
            names = "--reference",
            paramLabel = "COLUMN",
            description = "Column of the load cell; as in pads.yaml (readings: force) unless said otherwise.")
    private String reference = "";

    @Option(
            names = "--reference-clock",
            paramLabel = "COLUMN",
            description = "The load cell was logged by another instrument and merged into the log: column of that"
                    + " instrument's clock; as in pads.yaml (readings: force time) unless said otherwise. In seconds, or"
                    + " in the unit that the log's head gives.")
    private String clock = "";

    @Option(
            names = "--pad",
            paramLabel = "PAD",
            description = "Calibrate this pad alone; what calibration.yaml says of the others stays.")
    private String pad = "";

    @Option(
            names = "--page",
            paramLabel = "FILE.html",
            description = "Write the page there instead of DIR/results/calibration.html.")
    private @Nullable Path page;

    CalibrateCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        OpenProject open = open();
        PadSetup setup = PadCommands.setup(open);
        Readings readings = PadLogs.readings(open, setup);
        PadLog.Against against = against(readings);
        List<String> remarks = new ArrayList<>();
        SensorLog log = PadLogs.reading(file, () -> {
            try (PadLog source = PadLog.toCalibrate(at.path(file), readings, against)) {
                SensorLog all = source.all();
                remarks.addAll(source.remarks());
                return all;
            }
        });
        Optional<Decoding> before = before(readings);
        Rates rates = new Rates(
                setup.judging().falseAlarm(),
                setup.judging().miss(),
                setup.judging().zeros());
        Calibration c;
        try {
            c = Calibrator.of(log, rates);
        } catch (IllegalArgumentException e) {
            throw new CommandFailure(Exit.FAULTS, file + ": " + e.getMessage(), e);
        }
        before.ifPresent(b -> checkAlike(b, c));
        String name = String.valueOf(file.getFileName());
        at.out().println(CalibrationText.of(c, name, remarks));
        Path written = dir().resolve(CalibrationFile.NAME);
        String made = "gripwright " + Version.TEXT;
        String text = pad.isEmpty()
                ? CalibrationFile.text(c, name, made)
                : CalibrationFile.text(c, name, made, readings, before);
        ResultFile.write(at.path(written), text);
        Path shown = page == null ? dir().resolve("results/calibration.html") : page;
        ResultFile.write(at.path(shown), CalibrationPage.write(c, name, remarks));
        at.out().println();
        at.out().println("numbers  written to " + written);
        at.out().println("page     written to " + shown);
        results.json(() -> CalibrationJson.of(open.origin(), c, name, remarks));
        results.picture(() -> CalibrationPicture.sensitivities(c).standAlone());
        boolean sound = c.taxels().stream().allMatch(t -> t.state() == Taxel.State.FITTED && !t.recast());
        return sound ? Exit.YES : Exit.NO;
    }

    /** What calibration.yaml says so far, where other pads stay in it. */
    private Optional<Decoding> before(Readings readings) {
        Path folder = at.path(dir());
        if (pad.isEmpty() || !CalibrationFile.isIn(folder)) {
            return Optional.empty();
        }
        Decoding before = CalibrationFile.read(folder);
        List<String> lost = before.taxels().stream()
                .map(Decoding.Cell::column)
                .filter(c -> !readings.taxelColumns().contains(c))
                .toList();
        if (!lost.isEmpty() || !before.unit().equals(readings.unit().base())) {
            throw new CommandFailure(
                    Exit.USAGE,
                    CalibrationFile.NAME + " was made for other readings than pads.yaml names now ("
                            + (lost.isEmpty() ? "in " + before.unit() : "taxels " + String.join(", ", lost))
                            + "), and --pad keeps the other pads in it; calibrate all pads, or move the file away");
        }
        return Optional.of(before);
    }

    private void checkAlike(Decoding before, Calibration c) {
        boolean kept = before.taxels().stream()
                .anyMatch(t -> t.model().isPresent() && !t.pad().equals(pad));
        if (kept && before.plate() != c.plate()) {
            throw new CommandFailure(
                    Exit.USAGE,
                    CalibrationFile.NAME + " holds pads that were pressed by a " + (before.plate() ? "plate" : "probe")
                            + ", in this log " + pad + " was pressed by a " + (c.plate() ? "plate" : "probe")
                            + "; press all pads alike, or move the file away");
        }
    }

    private PadLog.Against against(Readings readings) {
        String column = reference.isEmpty()
                ? readings.force()
                        .orElseThrow(
                                () -> new CommandFailure(
                                        Exit.USAGE,
                                        "no reference: name the load cell's column by --reference, or in pads.yaml (readings: force)"))
                : reference;
        if (!pad.isEmpty() && !readings.taxels().containsKey(pad)) {
            throw new CommandFailure(
                    Exit.USAGE,
                    "--pad is '" + pad + "'; expected a pad with columns in pads.yaml (readings: taxels): "
                            + String.join(", ", readings.taxels().keySet()));
        }
        // The clock in pads.yaml is that of the load cell in pads.yaml.
        boolean same = readings.force().equals(Optional.of(column));
        Optional<Readings.Clock> own = readings.forceTime()
                .filter(t -> clock.isEmpty() ? same : t.column().equals(clock));
        return new PadLog.Against(
                column,
                clock.isEmpty() ? own.map(Readings.Clock::column) : Optional.of(clock),
                own.map(Readings.Clock::tick).orElse(0.0),
                pad.isEmpty() ? Optional.empty() : Optional.of(pad));
    }
}
