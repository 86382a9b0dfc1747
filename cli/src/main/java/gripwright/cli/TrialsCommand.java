package gripwright.cli;

import gripwright.closing.Policy;
import gripwright.closing.Sensing;
import gripwright.files.RunTable;
import gripwright.files.json.PoliciesJson;
import gripwright.files.json.TrialsJson;
import gripwright.model.GraspObject;
import gripwright.report.PoliciesPicture;
import gripwright.study.Findings;
import gripwright.study.Jobs;
import gripwright.study.PolicyResult;
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
            "The exit code answers whether the weighted total reaches the wanted success; with --against, whether the policy",
            "gains success or spares the object way with any of them, beyond luck.",
            "",
            "Examples:",
            "  gripwright trials bench",
            "  gripwright trials bench --runs 1000 --seed 7 --json trials.json --picture trials.svg",
            "  gripwright trials bench --policy centre --against blind",
            "  gripwright trials bench --table runs.parquet     after 'gripwright with-tables', once"
        })
final class TrialsCommand extends ProjectCommand {
    @Mixin
    private final PadOption pads = new PadOption();

    @Mixin
    private final ThreadOption threads = new ThreadOption();

    @Mixin
    private final SampleOptions samples = new SampleOptions();

    @Mixin
    private final PolicyOption policy = new PolicyOption();

    @Option(
            names = "--against",
            paramLabel = "WORD",
            converter = PolicyOption.Reader.class,
            description =
                    "Another policy: close with both on the same runs, and say what the first is worth beside it.")
    private @Nullable Policy against;

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
        Sensing sensing = policy.sensing(open, against != null && against.feels());
        if (against != null) {
            if (table != null) {
                throw new CommandFailure(
                        Exit.USAGE, "--table holds the runs of one policy; leave it out beside --against");
            }
            return compare(open, against, new Studies(at, open, pads.numerics(), jobs, policy.policy(), sensing));
        }
        for (GraspObject object : open.project().need().objects()) {
            for (String grip : object.grips()) {
                PolicyOption.check(policy.policy(), open.project().hand(), open.grip(grip), sensing);
            }
        }
        Studies studies = new Studies(at, open, pads.numerics(), jobs, policy.policy(), sensing);
        RunTable runs = new RunTable();
        TrialsResult trials = studies.trials(
                samples.runs(), samples.seed(), table == null ? UnaryOperator.identity() : runs::through);
        at.out()
                .println(Say.count(samples.runs(), "run", "runs") + " for each object and grip, seed " + samples.seed()
                        + (trials.stopped() ? "; stopped before the end" : "") + "\n");
        at.out().println(policy.line() + TrialsText.of(trials, wanted) + "\n");
        at.out().println(Words.findings(Answer.inShort(Findings.of(open.project(), trials))) + "\n");
        at.out().println(CloseText.judged(OpenProject.CRITERIA));
        at.out().println(open.assumptionsLine());
        results.json(() -> TrialsJson.of(
                open.origin(),
                OpenProject.CRITERIA,
                wanted,
                trials,
                policy.policy().word(),
                policy.noiseSeed()));
        results.picture(() -> Pictures.trials(trials, open.project().need()));
        if (table != null) {
            TableFile.write(at, table, runs.table(open.project().need()));
        }
        return studies.stopped() ? Exit.STOPPED : TrialsText.exit(trials, wanted);
    }

    /** The exit code answers whether the policy is worth something: more success or less way, beyond luck, anywhere. */
    private Exit compare(OpenProject open, Policy other, Studies studies) {
        if (other.equals(policy.policy())) {
            throw new CommandFailure(
                    Exit.USAGE, "--policy and --against are both '" + other.word() + "'; name two different ones");
        }
        PolicyResult result = studies.policies(other, samples.runs(), samples.seed(), policy.seed());
        at.out().println(PolicyText.of(policy.policy(), other, result) + "\n");
        at.out().println(open.assumptionsLine());
        results.json(() -> PoliciesJson.of(open.origin(), OpenProject.CRITERIA, result));
        results.picture(() -> PoliciesPicture.draw(result).standAlone());
        boolean worth = result.rows().stream()
                .anyMatch(r -> r.possible()
                        && (r.successSettled() && r.successChange() > 0 || r.changeSettled() && r.change() < 0));
        return studies.stopped() ? Exit.STOPPED : worth ? Exit.YES : Exit.NO;
    }
}
