package gripwright.cli;

import gripwright.files.CalibrationFile;
import gripwright.files.DataTable;
import gripwright.files.ForceTable;
import gripwright.files.PadLog;
import gripwright.files.Tables;
import gripwright.files.json.DecodeJson;
import gripwright.pad.PadSetup;
import gripwright.pad.Readings;
import gripwright.report.DecodePicture;
import gripwright.signal.Decoder;
import gripwright.signal.Decoding;
import gripwright.signal.ForceCourse;
import gripwright.units.QuantityText;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** From a log to forces. */
@Command(
        name = "decode",
        description = "Turn a log of readings into forces by calibration.yaml: per taxel with uncertainty, touch and"
                + " release, suspicion of slip, and the centre of force along each pad.",
        footer = {
            "",
            "The log is read row by row, so it may be longer than the memory. A pad is touched when a taxel",
            "shows more than 5 standard deviations twice in a row, and released when all show less than half",
            "of that. Slip is suspected when the centre of force moves by more than a fifth of the pitch, 5",
            "standard deviations and what the taxels' play can move it by, within 0.1 s, 0.3 s or 1 s, while",
            "the total neither rises by more than a tenth nor falls by more than a fifth (common practice, no",
            "source). What that catches and what not stands in docs/calibration.md.",
            "",
            "Example:",
            "  gripwright decode demo --log demo/logs/invented-calibration.csv.gz --to forces.csv"
        })
final class DecodeCommand extends ProjectCommand {
    private static final int MOST_EVENTS = 20;
    private static final int KEPT_EVENTS = 10_000;

    @Option(
            names = "--log",
            required = true,
            paramLabel = "FILE",
            description = "The log: CSV with a line of column names; may be packed by gzip.")
    private Path file = Path.of("");

    @Option(
            names = "--to",
            paramLabel = "FILE",
            description = "Write the forces there, a row per reading: FILE.csv, or FILE.parquet after 'gripwright"
                    + " with-tables'.")
    private @Nullable Path to;

    @Option(
            names = "--zero",
            paramLabel = "SECONDS",
            defaultValue = "1",
            description = "Nothing touches the pads in the first SECONDS: their mean is the zero. 0 takes the"
                    + " calibration's zero, which drifts (${DEFAULT-VALUE} unless said otherwise).")
    private double zero;

    DecodeCommand(Surroundings at) {
        super(at);
    }

    /** What was decoded, for words and JSON. */
    private record Done(
            long rows,
            double first,
            double last,
            List<Decoder.Event> events,
            long eventCount,
            List<String> remarks,
            Decoder decoder,
            List<ForceCourse> courses) {}

    @Override
    Exit run() {
        if (!(zero >= 0) || zero > 1e6) {
            throw new CommandFailure(Exit.USAGE, "--zero is " + zero + "; expected seconds, 0 or more");
        }
        TableFile.check(to);
        OpenProject open = open();
        PadSetup setup = PadCommands.setup(open);
        Readings readings = PadLogs.readings(open, setup);
        Decoding how = CalibrationFile.read(open.folder());
        how.misfit(readings).ifPresent(why -> {
            throw new CommandFailure(Exit.USAGE, CalibrationFile.NAME + " " + why);
        });
        List<Decoder.PadPlace> places = Decoder.places(setup.pads(), readings);
        Done done = PadLogs.reading(
                file, () -> decode(readings, how, places, setup.judging().zeros()));
        say(done, how, places);
        results.json(() -> DecodeJson.of(
                open.origin(),
                String.valueOf(file.getFileName()),
                done.rows(),
                done.first(),
                done.last(),
                done.events(),
                done.eventCount(),
                done.remarks()));
        results.picture(
                () -> DecodePicture.of(places, done.courses(), done.events()).standAlone());
        return Exit.YES;
    }

    private Done decode(Readings readings, Decoding how, List<Decoder.PadPlace> places, int zeros) throws IOException {
        Decoder decoder = new Decoder(how, places, zero, zeros);
        List<Decoder.Event> events = new ArrayList<>();
        List<Decoder.Event> fresh = new ArrayList<>();
        long eventCount = 0;
        long rows = 0;
        double first = Double.NaN;
        double last = Double.NaN;
        int k = how.taxels().size();
        double[] reading = new double[k];
        double[] temperature = new double[k];
        List<ForceCourse> courses = places.stream().map(p -> new ForceCourse()).toList();
        List<String> remarks;
        Path target = to == null ? null : at.path(to).toAbsolutePath();
        Path part = target == null ? null : target.resolveSibling("." + target.getFileName() + ".part.csv");
        try (PadLog log = PadLog.toDecode(at.path(file), readings);
                ForceTable table = part == null ? null : new ForceTable(writer(part), how, places)) {
            while (log.next()) {
                for (int i = 0; i < k; i++) {
                    reading[i] = log.reading(i);
                    temperature[i] = log.temperature(i);
                }
                double time = log.time();
                first = Double.isNaN(first) ? time : first;
                last = time;
                if (decoder.step(time, reading, temperature, log.ambient(), fresh)) {
                    rows++;
                    for (int p = 0; p < courses.size(); p++) {
                        courses.get(p).add(time, decoder.total(p), decoder.centre(p));
                    }
                    if (table != null) {
                        table.row(time, decoder);
                    }
                }
                eventCount += fresh.size();
                for (Decoder.Event e : fresh) {
                    if (events.size() < KEPT_EVENTS) {
                        events.add(e);
                    }
                }
                fresh.clear();
            }
            remarks = log.remarks();
        } catch (IOException | RuntimeException e) {
            if (part != null) {
                Files.deleteIfExists(part);
            }
            throw e;
        }
        if (target != null && part != null) {
            finish(part, target, ForceTable.columns(how, places));
        }
        return new Done(rows, first, last, events, eventCount, remarks, decoder, courses);
    }

    /** The whole table takes the place of an old one, or none does. */
    private static void finish(Path part, Path target, List<DataTable.Column> columns) throws IOException {
        try {
            if (String.valueOf(target.getFileName()).endsWith(".parquet")) {
                Tables.parquetOfCsv(part, target, columns);
            } else {
                Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static Writer writer(Path target) throws IOException {
        Path folder = target.getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        return Files.newBufferedWriter(target, StandardCharsets.UTF_8);
    }

    private void say(Done done, Decoding how, List<Decoder.PadPlace> places) {
        at.out()
                .println(Words.wrapped("log      " + file.getFileName() + ": " + done.rows() + " rows of forces from "
                        + QuantityText.number(done.first(), 5) + " s to " + QuantityText.number(done.last(), 5) + " s"
                        + (zero > 0
                                ? ", zero from the first " + QuantityText.number(zero, 3) + " s"
                                : ", zero as calibrated")));
        done.remarks().forEach(r -> at.out().println("         " + Words.wrapped(r)));
        if (done.rows() == 0) {
            at.out().println("         no rows are left after the zero");
        }
        for (int p = 0; p < places.size(); p++) {
            at.out()
                    .println(Words.wrapped("pad      " + places.get(p).name() + ": "
                            + (done.decoder().takesApart(p)
                                    ? "cross-talk taken apart"
                                    : how.plate()
                                            ? "calibrated by a plate: its force is shared out evenly over the pad's taxels"
                                            : "each taxel by itself: cross-talk is not known")));
        }
        List<Decoding.Cell> without =
                how.taxels().stream().filter(c -> c.model().isEmpty()).toList();
        if (!without.isEmpty()) {
            at.out()
                    .println("         "
                            + Words.wrapped("no forces from "
                                    + String.join(
                                            ", ",
                                            without.stream()
                                                    .map(c -> c.column() + " (" + c.words() + ")")
                                                    .toList())));
        }
        at.out().println();
        Table table = new Table("rlll", "time, s", "pad", "event", "taxel");
        done.events().stream()
                .limit(MOST_EVENTS)
                .forEach(e -> table.row(
                        QuantityText.number(e.time(), 6),
                        e.pad(),
                        e.kind().words(),
                        e.taxel() < 0 ? "" : how.taxels().get(e.taxel()).column()));
        if (table.isEmpty()) {
            at.out().println("Nothing touched the pads.");
        } else {
            at.out().println(table);
            if (done.eventCount() > MOST_EVENTS) {
                at.out().println("and " + (done.eventCount() - MOST_EVENTS) + " more");
            }
        }
        if (to != null) {
            at.out().println("\nforces   written to " + to);
        }
    }
}
