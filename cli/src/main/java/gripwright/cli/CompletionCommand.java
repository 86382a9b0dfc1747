package gripwright.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints what a shell needs to complete commands and options. */
@Command(
        name = "completion",
        description = "Print a script with which bash or zsh completes commands and options.",
        footer = {"", "Example:", "  source <(gripwright completion)"})
final class CompletionCommand implements Callable<Integer> {
    private final Surroundings at;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before the call
    private CommandSpec spec;

    CompletionCommand(Surroundings at) {
        this.at = at;
    }

    @Override
    public Integer call() {
        at.out().print(AutoComplete.bash("gripwright", spec.root().commandLine()));
        return Exit.YES.code();
    }
}
