package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/** docs/commands.md is made from the help texts, so that it cannot say anything else. */
class CommandsPageTest {
    private static final Path PAGE = Path.of("../docs/commands.md");

    @Test
    void pageSaysWhatTheHelpSays() throws IOException {
        String page = page();
        if (Boolean.getBoolean("accept")) {
            Files.writeString(PAGE, page);
        }
        assertThat(Files.readString(PAGE))
                .as("made anew by: ./check quick cli -Daccept=true")
                .isEqualTo(page);
    }

    @Test
    void versionIsThatOfTheBuild() throws IOException {
        assertThat(Files.readString(Path.of("../pom.xml")))
                .contains("<artifactId>gripwright</artifactId>\n  <version>" + Version.TEXT + "</version>");
    }

    private static String page() {
        StringBuilder page = new StringBuilder("# Commands\n\n");
        page.append("Made from the help texts by a test; do not edit by hand.\n\n");
        page.append("## Exit codes\n\n| code | meaning |\n|---:|---|\n");
        for (Exit exit : Exit.values()) {
            page.append("| ")
                    .append(exit.code())
                    .append(" | ")
                    .append(exit.meaning())
                    .append(" |\n");
        }
        page.append("\nA signal other than Ctrl-C ends with 128 plus its number, as usual.\n");
        CommandLine all = Gripwright.commands(Surroundings.real());
        all.setUsageHelpWidth(100);
        append("gripwright", all, page);
        all.getCommandSpec().subcommands().forEach((name, command) -> {
            if (!command.getCommandSpec().usageMessage().hidden()) {
                append("gripwright " + name, command, page);
            }
        });
        return page.toString();
    }

    private static void append(String title, CommandLine command, StringBuilder page) {
        String help = command.getUsageMessage(Ansi.OFF).replace("\r\n", "\n").stripTrailing();
        page.append("\n## ").append(title).append("\n\n```\n").append(help).append("\n```\n");
    }
}
