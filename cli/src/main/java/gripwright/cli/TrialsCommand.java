package gripwright.cli;

import gripwright.files.RunTable;
import gripwright.files.json.TrialsJson;
import gripwright.study.Findings;
import gripwright.study.Jobs;
import gripwright.study.TrialsResult;
import java.nio.file.Path;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How often each object is picked up. */
@Command(
        name = "trials",
        description = "Try every object with each of its grips at random misplacements: how often is it picked up?",
        footer = {
            "",
            "The same seed gives the same result on any number of threads.",
            "Ctrl-C stops the trials; what is finished is printed and written, and the same command goes on from there.",
            "The exit code answers whether the weighted total reaches the wanted success.",
            "",
            "Examples:",
            "  gripwright trials bench",
            "  gripwright trials bench --runs 1000 --seed 7 --json trials.json --picture trials.svg",
            "  gripwright trials bench --table runs.parquet     after 'gripwright with-tables', once"
        })
final class TrialsCommand extends ProjectCommand {
    @Mixin
    private final PadOption pads = new PadOption();

    @Mixin
    private final ThreadOption threads = new ThreadOption();

    @Mixin
    private final SampleOptions samples = new SampleOptions();

    @Option(
            names = "--table",
            paramLabel = "FILE",
            description =
                    "Also write every run as a row of FILE.csv or FILE.parquet, those that only chose the grip too.")
    private @Nullable Path table;

    TrialsCommand(Surroundings at) {
        super(at);
    }

    @Override
    Exit run() {
        Jobs jobs = threads.jobs();
        samples.check();
        TableFile.check(table);
        OpenProject open = open();
        double wanted = open.project().need().wantedSuccess();
        Studies studies = new Studies(at, open, pads.numerics(), jobs);
        RunTable runs = new RunTable();
        TrialsResult trials = studies.trials(
                samples.runs(), samples.seed(), table == null ? UnaryOperator.identity() : runs::through);
        at.out()
                .println(Say.count(samples.runs(), "run", "runs") + " for each object and grip, seed " + samples.seed()
                        + (trials.stopped() ? "; stopped before the end" : "") + "\n");
        at.out().println(TrialsText.of(trials, wanted) + "\n");
        at.out().println(Words.findings(Answer.inShort(Findings.of(open.project(), trials))) + "\n");
        at.out().println(CloseText.judged(OpenProject.CRITERIA));
        at.out().println(open.assumptionsLine());
        results.json(() -> TrialsJson.of(open.origin(), OpenProject.CRITERIA, wanted, trials));
        results.picture(() -> Pictures.trials(trials, open.project().need()));
        if (table != null) {
            TableFile.write(at, table, runs.table(open.project().need()));
        }
        return studies.stopped() ? Exit.STOPPED : TrialsText.exit(trials, wanted);
    }
}
