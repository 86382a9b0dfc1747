package gripwright.cli;

import gripwright.files.json.TrialsJson;
import gripwright.model.GraspObject;
import gripwright.study.CaptureMap;
import gripwright.study.Jobs;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Everything about a project on one page. */
@Command(
        name = "report",
        description = "Run trials and maps and write one HTML page that answers for the whole project.",
        footer = {
            "",
            "The report and the results it is made from go to the folder results in DIR.",
            "Ctrl-C stops computing; the report is written from what is finished.",
            "The exit code says only whether the report was written.",
            "",
            "Examples:",
            "  gripwright report bench",
            "  gripwright report bench --runs 1000 --map mug --map \"spray can\" --out bench.html"
        })
final class ReportCommand extends ProjectCommand {
    private static final int CELLS = 21;

    @Mixin
    private final PadOption pads = new PadOption();

    @Mixin
    private final ThreadOption threads = new ThreadOption();

    @Mixin
    private final SampleOptions samples = new SampleOptions();

    @Mixin
    private final GridOptions grid = new GridOptions(CELLS);

    @Option(
            names = "--map",
            paramLabel = "NAME",
            description = "Object to map, with its best grip; may be repeated. All objects unless said otherwise.")
    private List<String> mapped = List.of();

    @Option(names = "--out", paramLabel = "FILE.html", description = "Write the report there instead.")
    private @Nullable Path out;

    ReportCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        Jobs jobs = threads.jobs();
        samples.check();
        OpenProject open = open();
        double wanted = open.project().need().wantedSuccess();
        CaptureMap map = grid.map(wanted);
        List<GraspObject> objects = mapped.isEmpty()
                ? open.project().need().objects()
                : mapped.stream().map(open::object).toList();
        Path report = out == null ? dir().resolve("results/report.html") : out;
        ReportMaker maker = new ReportMaker(
                at,
                open,
                new ReportMaker.Plan(samples.runs(), samples.seed(), map, objects, pads.numerics(), jobs, typed()));
        ReportMaker.Made made = maker.compute();
        for (String line : maker.write(made, at.path(report).toAbsolutePath())) {
            at.out().println(Words.wrapped(line));
        }
        at.out().println();
        at.out().println(open.assumptionsLine());
        results.json(() -> TrialsJson.of(open.origin(), OpenProject.CRITERIA, wanted, made.trials()));
        results.picture(() -> Pictures.trials(made.trials(), open.project().need()));
        at.out().println("report   written to " + report);
        return made.stopped() ? Exit.STOPPED : Exit.YES;
    }
}
