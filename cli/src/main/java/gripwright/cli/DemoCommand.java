package gripwright.cli;

import gripwright.closing.Numerics;
import gripwright.files.ProjectReader;
import gripwright.files.json.TrialsJson;
import gripwright.model.GraspObject;
import gripwright.study.CaptureMap;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A worked example from the files to the answer. */
@Command(
        name = "demo",
        description = "Make a worked example (a neighbourhood repair bench, invented), and answer for it.",
        footer = {
            "",
            "Makes the folder demo unless it exists; then checks it, tries every object, maps the two that count most,",
            "and writes a report. The folder is yours: change a number and run 'gripwright demo' again.",
            "",
            "Examples:",
            "  gripwright demo",
            "  gripwright demo --to /tmp/bench",
            "  gripwright demo --touch --only-files --to feeling"
        })
final class DemoCommand implements Callable<Integer> {
    private static final int RUNS = 60;
    private static final int CELLS = 31;
    private static final int MAPS = 2;
    private static final long SEED = 1;

    @Option(names = "--to", paramLabel = "DIR", description = "Folder to make; ${DEFAULT-VALUE} unless said otherwise.")
    private Path to = Path.of("demo");

    @Option(names = "--only-files", description = "Only make the folder.")
    private boolean onlyFiles;

    @Option(
            names = "--touch",
            description = "The same bench with a hand that feels: a motor for each finger and chips round the tips.")
    private boolean touch;

    @Mixin
    private final ThreadOption threads = new ThreadOption();

    @Mixin
    private final ResultOptions results;

    private final Surroundings at;

    DemoCommand(Surroundings at) {
        this.at = at;
        this.results = new ResultOptions(at);
    }

    @Override
    public Integer call() {
        makeFolder();
        if (onlyFiles) {
            return Exit.YES.code();
        }
        OpenProject open = OpenProject.read(at, to);
        at.out().println(CheckCommand.contents(open) + "\n");
        at.out().flush();
        ReportMaker maker = new ReportMaker(at, open, plan(open));
        ReportMaker.Made made = maker.compute();
        double wanted = open.project().need().wantedSuccess();
        at.out().println(TrialsText.best(made.trials(), wanted) + "\n");
        results.json(() -> TrialsJson.of(open.origin(), OpenProject.CRITERIA, wanted, made.trials()));
        results.picture(() -> Pictures.trials(made.trials(), open.project().need()));
        Path report = to.resolve("results/report.html");
        for (String line : maker.write(made, at.path(report).toAbsolutePath())) {
            at.out().println(Words.wrapped(line));
        }
        at.out().println(open.assumptionsLine());
        at.out().println("report   written to " + report);
        return (made.stopped() ? Exit.STOPPED : Exit.YES).code();
    }

    private void makeFolder() {
        Path folder = at.path(to);
        if (Files.exists(folder.resolve(ProjectReader.HAND)) || Files.exists(folder.resolve(ProjectReader.NEED))) {
            at.out().println(to + " exists and is used as it is.");
            return;
        }
        try {
            if (touch) {
                DemoFiles.copyTouchingTo(folder);
            } else {
                DemoFiles.copyTo(folder);
            }
        } catch (IOException e) {
            throw new CommandFailure(Exit.FILES, "cannot write the demo to " + to + ": " + ResultFile.reason(e), e);
        }
        at.out().println("made " + to + ": " + String.join(", ", names()));
    }

    private static List<String> names() {
        try {
            return DemoFiles.names();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private ReportMaker.Plan plan(OpenProject open) {
        CaptureMap map =
                new CaptureMap(GridOptions.SPAN, CELLS, open.project().need().wantedSuccess());
        List<GraspObject> mapped = open.project().need().objects().stream()
                .sorted(Comparator.comparingDouble(GraspObject::weight).reversed())
                .limit(MAPS)
                .toList();
        return new ReportMaker.Plan(RUNS, SEED, map, mapped, Numerics.DEFAULT, threads.jobs(), "gripwright demo");
    }
}
