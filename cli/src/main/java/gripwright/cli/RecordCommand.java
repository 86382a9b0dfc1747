package gripwright.cli;

import gripwright.files.Recording;
import gripwright.files.json.RecordJson;
import gripwright.record.Clocks;
import gripwright.record.LogFailure;
import gripwright.record.Recorder;
import gripwright.record.Source;
import gripwright.record.SourceAddress;
import gripwright.record.Sources;
import gripwright.report.RecordPicture;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Readings of the built hand into a log. */
@Command(
        name = "record",
        description = "Take the readings of the built hand's pads into a log.",
        footer = {
            "",
            "SOURCE is one of:",
            "  serial:/dev/ttyACM0?baud=115200     a serial port",
            "  tcp:HOST:PORT                       a connection",
            "  -                                   standard input",
            "  file:PATH                           a file or log, at its own pace; file:PATH?pace=max at once",
            "",
            "One reading a line, as CSV or as a JSON object; a first line may name the columns, else those of pads.yaml",
            "count, in their order. Lines that are no readings go to a side file, NAME.bad.csv, with number and reason.",
            "Ends with Ctrl-C, with the source, after --for or after --lines. docs/logs.md describes log and side file,",
            "and what happens when a disk is full, a port unplugged, a source silent, a clock set back.",
            "The exit code is 1 if readings are missing, lines were malformed, or no reading came.",
            "",
            "Examples:",
            "  gripwright record bench --from serial:/dev/ttyACM0?baud=115200",
            "  gripwright record bench --from tcp:192.168.1.20:4000 --for \"10 min\" --picture record.svg",
            "  ./my-reader | gripwright record bench --from - --to bench/logs/taps.csv"
        })
final class RecordCommand extends ProjectCommand {
    private static final DateTimeFormatter NAME =
            DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmmss", Locale.ROOT).withZone(ZoneOffset.UTC);

    @Option(
            names = "--from",
            required = true,
            paramLabel = "SOURCE",
            converter = AddressReader.class,
            description = "Where the readings come from.")
    @SuppressWarnings("NullAway.Init") // set by picocli before the call
    private Given from;

    @Option(
            names = "--to",
            paramLabel = "FILE",
            description =
                    "The log; DIR/logs/DATE-TIME.csv (UTC) unless said otherwise. A log with the same columns is gone on "
                            + "with; nothing is overwritten.")
    private @Nullable Path to;

    @Option(
            names = "--for",
            paramLabel = "DURATION",
            converter = DurationReader.class,
            description = "End after that time, such as \"10 min\".")
    private double seconds = Double.POSITIVE_INFINITY;

    @Option(names = "--lines", paramLabel = "N", description = "End after N readings.")
    private long lines = Long.MAX_VALUE;

    RecordCommand(Surroundings at) {
        super(at);
    }

    /** A source and how it was written. */
    record Given(String text, SourceAddress address) {}

    static final class AddressReader implements ITypeConverter<Given> {
        @Override
        public Given convert(String value) {
            try {
                return new Given(value, SourceAddress.of(value));
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(String.valueOf(e.getMessage()));
            }
        }
    }

    static final class DurationReader implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Quantities.duration(value);
        }
    }

    @Override
    Exit run() {
        if (lines < 1) {
            throw new CommandFailure(Exit.USAGE, "--lines is " + lines + "; expected a whole number of 1 or more");
        }
        OpenProject open = open();
        RecordSetup setup = RecordSetup.of(open);
        Path given = to == null ? logName(open) : to;
        Recorder.Plan plan = new Recorder.Plan(
                at.path(given),
                given.toString(),
                from.address(),
                from.text(),
                setup.layout(),
                setup.heading(),
                lines,
                seconds);
        at.interruption().listen();
        Source source = source(plan);
        RecordView view = new RecordView(at.err(), at.terminal(), given, from.text(), at.interruption());
        Recording recording = Recorder.run(plan, source, Clocks.REAL, view);
        view.end();
        at.out().println(RecordText.of(recording));
        results.json(() -> RecordJson.of(open.origin(), recording));
        results.picture(() -> RecordPicture.draw(recording).standAlone());
        return exit(recording);
    }

    private Source source(Recorder.Plan plan) {
        try {
            Recorder.check(plan.log());
            return Sources.open(plan.source(), at.folder());
        } catch (IOException e) {
            throw new CommandFailure(Exit.FILES, String.valueOf(e.getMessage()), e);
        } catch (LogFailure e) {
            throw new CommandFailure(Exit.FILES, String.valueOf(e.getMessage()), e);
        }
    }

    /** A name that is not taken. */
    private Path logName(OpenProject open) {
        String stem = NAME.format(Instant.ofEpochMilli(System.currentTimeMillis()));
        Path folder = open.given().resolve("logs");
        Path file = folder.resolve(stem + ".csv");
        for (int i = 2; Files.exists(at.path(file)); i++) {
            file = folder.resolve(stem + "-" + i + ".csv");
        }
        return file;
    }

    private Exit exit(Recording recording) {
        switch (recording.end()) {
            case LOG_FAILED, SOURCE_FAILED -> {
                at.err().println("gripwright: " + recording.endWords());
                return Exit.FILES;
            }
            case STOPPED -> {
                return Exit.STOPPED;
            }
            default -> {
                return recording.counts().whole() && recording.counts().readings() > 0 ? Exit.YES : Exit.NO;
            }
        }
    }
}
