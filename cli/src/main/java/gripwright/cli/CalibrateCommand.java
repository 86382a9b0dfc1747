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
import gripwright.signal.Rates;
import gripwright.signal.SensorLog;
import gripwright.signal.Taxel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
        String column = reference.isEmpty()
                ? readings.force()
                        .orElseThrow(
                                () -> new CommandFailure(
                                        Exit.USAGE,
                                        "no reference: name the load cell's column by --reference, or in pads.yaml (readings: force)"))
                : reference;
        List<String> remarks = new ArrayList<>();
        SensorLog log = PadLogs.reading(file, () -> {
            try (PadLog source = PadLog.toCalibrate(at.path(file), readings, column)) {
                SensorLog all = source.all();
                remarks.addAll(source.remarks());
                return all;
            }
        });
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
        String name = String.valueOf(file.getFileName());
        at.out().println(CalibrationText.of(c, name, remarks));
        Path written = dir().resolve(CalibrationFile.NAME);
        ResultFile.write(at.path(written), CalibrationFile.text(c, name, "gripwright " + Version.TEXT));
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
}
