package gripwright.cli;

import gripwright.files.ProjectFaults;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** The whole command with its subcommands. */
@Command(
        name = "gripwright",
        description =
                "Which objects does this robot hand pick up, how far off may they stand, where does it fail and why?",
        footer = {
            "",
            "A project is a folder with hand.yaml and need.yaml. To start:",
            "  gripwright demo                 a worked example, with a report",
            "  gripwright new bench            a project of your own",
            "  gripwright check bench          what is in it, or what is wrong with it",
            "  gripwright report bench         everything about it on one page",
            "  gripwright bench bench          the same in a browser, to look at and to change"
        })
final class Gripwright implements Callable<Integer> {
    private static final int WIDTH = 100;

    private final Surroundings at;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before the call
    private CommandSpec spec;

    private Gripwright(Surroundings at) {
        this.at = at;
    }

    /** All commands, ready to be executed. */
    static CommandLine commands(Surroundings at) {
        CommandLine all = new CommandLine(new Gripwright(at));
        all.addSubcommand(new NewCommand(at))
                .addSubcommand(new CheckCommand(at))
                .addSubcommand(new CloseCommand(at))
                .addSubcommand(new HoldCommand(at))
                .addSubcommand(new StrengthCommand(at))
                .addSubcommand(new MapCommand(at))
                .addSubcommand(new TrialsCommand(at))
                .addSubcommand(new PadCommand(at))
                .addSubcommand(new ScanCommand(at))
                .addSubcommand(new TouchCommand(at))
                .addSubcommand(new CalibrateCommand(at))
                .addSubcommand(new DecodeCommand(at))
                .addSubcommand(new VaryCommand(at))
                .addSubcommand(new PlanTrialsCommand(at))
                .addSubcommand(new ScoreCommand(at))
                .addSubcommand(new RecordCommand(at))
                .addSubcommand(new ReportCommand(at))
                .addSubcommand(new BenchCommand(at))
                .addSubcommand(new DemoCommand(at))
                .addSubcommand(new SchemaCommand(at))
                .addSubcommand(new CompletionCommand(at))
                .addSubcommand(new WarmUpCommand(at));
        all.getSubcommands().values().forEach(one -> dress(one.getCommandSpec()));
        dress(all.getCommandSpec());
        all.setUsageHelpWidth(WIDTH);
        all.setCaseInsensitiveEnumValuesAllowed(true);
        all.setOut(at.out()).setErr(at.err());
        all.setParameterExceptionHandler((e, args) -> misunderstood(at, e));
        all.setExecutionExceptionHandler((e, command, parsed) -> failed(at, e, parsed));
        return all;
    }

    private static void dress(CommandSpec spec) {
        spec.mixinStandardHelpOptions(true);
        spec.versionProvider(new Version());
        spec.usageMessage().sortOptions(false);
    }

    @Override
    public Integer call() {
        spec.commandLine().usage(at.err());
        return Exit.USAGE.code();
    }

    private static int misunderstood(Surroundings at, ParameterException e) {
        at.err().println("gripwright: " + e.getMessage());
        if (e instanceof UnmatchedArgumentException unmatched) {
            UnmatchedArgumentException.printSuggestions(unmatched, at.err());
        }
        at.err()
                .println(
                        "'" + e.getCommandLine().getCommandSpec().qualifiedName() + " --help' says what can be asked.");
        return Exit.USAGE.code();
    }

    private static int failed(Surroundings at, Exception e, ParseResult parsed) {
        if (e instanceof ProjectFaults faults) {
            int n = faults.faults().size();
            at.err()
                    .println(
                            faults.getMessage() + "\n\n" + Say.count(n, "fault", "faults") + "; nothing was computed.");
            return Exit.FAULTS.code();
        }
        if (e instanceof CommandFailure failure) {
            at.err().println("gripwright: " + failure.getMessage());
            return failure.exit().code();
        }
        at.err().println("gripwright: a defect in Gripwright itself, not in your project: " + e);
        at.err().println("Please report it with these lines, the command and the project folder.");
        at.err()
                .println("command: " + String.join(" ", parsed.originalArgs()) + "; version " + Version.TEXT + ", Java "
                        + System.getProperty("java.version"));
        e.printStackTrace(at.err());
        return Exit.DEFECT.code();
    }
}
