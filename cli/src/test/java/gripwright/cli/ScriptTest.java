package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The launcher, on a repository of its own with stand-ins for Java and Maven that say how they were called. */
@DisabledOnOs(OS.WINDOWS)
class ScriptTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    private record Ran(int code, String text) {}

    @BeforeEach
    void repositoryWithoutABuild() throws IOException {
        Files.createDirectories(folder.resolve("repo/cli/src/main"));
        Files.writeString(folder.resolve("repo/pom.xml"), "");
        Files.writeString(folder.resolve("repo/cli/pom.xml"), "");
        Files.copy(Path.of("../gripwright"), folder.resolve("repo/gripwright"));
        executable("repo/gripwright");
        Files.createSymbolicLink(folder.resolve("link"), Path.of("repo/gripwright"));
        Files.createDirectories(folder.resolve("bin"));
        for (String tool : List.of(
                "bash",
                "dirname",
                "readlink",
                "find",
                "head",
                "sed",
                "touch",
                "mkdir",
                "rm",
                "mv",
                "cp",
                "grep",
                "awk",
                "sort",
                "cat",
                "tail")) {
            Files.createSymbolicLink(folder.resolve("bin/" + tool), where(tool));
        }
    }

    @Test
    void buildsOnceThenStartsFromAnyFolderThroughALink() throws Exception {
        stubJava("17.0.1");
        stubMaven();
        Ran first = run("link", "check", "p");
        assertThat(first.text).contains("first use: building", "built in", "gripwright.cli.Main check p");
        assertThat(first.code).isEqualTo(7);
        assertThat(run("link", "check", "p").text).doesNotContain("building").contains("Main check p");
        Files.writeString(folder.resolve("repo/cli/src/main/New.java"), "");
        Files.setLastModifiedTime(
                folder.resolve("repo/cli/src/main/New.java"),
                java.nio.file.attribute.FileTime.fromMillis(System.currentTimeMillis() + 5000));
        assertThat(run("link", "check", "p").text).contains("sources changed since the last build");
    }

    @Test
    void onlyShortCommandsGoWithoutTheOptimisingCompiler() throws Exception {
        stubJava("17.0.1");
        stubMaven();
        assertThat(run("link", "close", "p").text).contains("-XX:TieredStopAtLevel=1");
        for (String study : List.of("map", "trials", "report", "demo")) {
            assertThat(run("link", study, "p").text)
                    .doesNotContain("TieredStopAtLevel")
                    .contains("Main " + study);
        }
    }

    @Test
    void missingOrOldToolsAreNamedWithWhatToInstall() throws Exception {
        Ran noJava = run("link", "check", "p");
        assertThat(noJava.text).contains("Java is missing. Install JDK 17 or newer");
        assertThat(noJava.code).isEqualTo(Exit.FILES.code());
        stubJava("11.0.2");
        assertThat(run("link", "check", "p").text).contains("this is Java 11; Gripwright needs JDK 17 or newer");
        stubJava("17.0.1");
        Ran noMaven = run("link", "check", "p");
        assertThat(noMaven.text).contains("Maven is missing. Install version 3.8.7 or newer");
        assertThat(noMaven.code).isEqualTo(Exit.FILES.code());
    }

    @Test
    void aBuildThatFailsShowsItsErrorsAndTheLog() throws Exception {
        stubJava("17.0.1");
        script("bin/mvn", "echo '[ERROR] planted'; exit 1");
        Ran ran = run("link", "check", "p");
        assertThat(ran.text)
                .contains("the build failed", "[ERROR] planted", "target/build.log")
                .doesNotContain("Main");
        assertThat(ran.code).isEqualTo(Exit.FILES.code());
    }

    @Test
    void theModuleForTablesIsBuiltInOnlyWhenAsked() throws Exception {
        stubJava("17.0.1");
        stubMaven();
        assertThat(run("link", "check", "p").text).doesNotContain("tables");
        script("bin/mvn", "echo '[ERROR] planted'; exit 1");
        Ran failed = run("link", "with-tables");
        assertThat(failed.text).contains("[ERROR] planted").doesNotContain("Parquet now");
        assertThat(failed.code).isEqualTo(Exit.FILES.code());
        assertThat(run("link", "check", "p").text).contains("Main check p").doesNotContain("building");
        script(
                "bin/mvn",
                "mkdir -p cli/target/lib tables/target/lib; touch cli/target/lib/a.jar cli/target/gripwright-cli-1.jar"
                        + " tables/target/lib/duck.jar tables/target/gripwright-tables-1.jar; echo \"$@\" >asked.txt");
        Ran built = run("link", "with-tables");
        assertThat(built.text).contains("tables can be written as Parquet now");
        assertThat(built.code).isZero();
        assertThat(folder.resolve("repo/asked.txt")).content().contains("-pl cli,tables -am package");
        assertThat(run("link", "check", "p").text).contains("tables/duck.jar", "tables/gripwright-tables-1.jar");
        assertThat(run("link", "with-tables").text).contains("nothing to do");
    }

    @Test
    void checkSumsTheTestsOfAllModulesInItsLastLine() throws Exception {
        repositoryWithCheck();
        script(
                "bin/mvn",
                "for m in core cli; do mkdir -p $m/target/surefire-reports; echo '<testsuite name=\"a\" tests=\"5\""
                        + " errors=\"0\" skipped=\"0\" failures=\"0\">' >$m/target/surefire-reports/TEST-a.xml; done");
        Ran good = run("repo/check");
        assertThat(good.text.strip()).endsWith("\n10 passed, 0 failed");
        assertThat(good.code).isZero();
        script(
                "bin/mvn",
                "mkdir -p cli/target/surefire-reports; echo '<testsuite tests=\"7\" errors=\"1\" skipped=\"1\""
                        + " failures=\"2\">' >cli/target/surefire-reports/TEST-a.xml");
        Ran bad = run("repo/check", "quick");
        assertThat(bad.text.strip()).endsWith("\n3 passed, 3 failed, 1 skipped");
        assertThat(bad.code).isEqualTo(1);
    }

    @Test
    void checkCountsABuildThatBreaksAsAFailure() throws Exception {
        repositoryWithCheck();
        script("bin/mvn", "echo '[ERROR] /src/A.java:[1,2] planted'; exit 1");
        Ran ran = run("repo/check", "quick");
        assertThat(ran.text).contains("A.java:[1,2] planted").endsWith("0 passed, 1 failed\n");
        assertThat(ran.code).isEqualTo(1);
        script("bin/mvn", "exit 0");
        assertThat(run("repo/check", "quick").text).endsWith("0 passed, 1 failed\n");
        assertThat(run("repo/check", "quik").code).isEqualTo(2);
    }

    private void repositoryWithCheck() throws IOException {
        script("bin/chromium", "exit 0");
        script("bin/socat", "exit 0");
        Files.copy(Path.of("../check"), folder.resolve("repo/check"));
        executable("repo/check");
        script("bin/javac", "exit 0");
    }

    private void stubJava(String version) throws IOException {
        script(
                "bin/java",
                "case \"$*\" in -version) echo 'openjdk version \"" + version
                        + "\"' >&2;; *) echo \"$@\"; exit 7;; esac");
    }

    private void stubMaven() throws IOException {
        script("bin/mvn", "mkdir -p cli/target/lib; touch cli/target/lib/a.jar cli/target/gripwright-cli-1.jar");
    }

    private void script(String name, String body) throws IOException {
        Files.writeString(folder.resolve(name), "#!" + where("bash") + "\n" + body + "\n");
        executable(name);
    }

    private void executable(String name) throws IOException {
        Files.setPosixFilePermissions(folder.resolve(name), PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    private static Path where(String tool) {
        for (String place : List.of("/bin/", "/usr/bin/", "/usr/local/bin/")) {
            if (Files.isExecutable(Path.of(place + tool))) {
                return Path.of(place + tool);
            }
        }
        throw new IllegalStateException(tool + " is in none of the usual places");
    }

    private Ran run(String script, String... args) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(folder.resolve(script).toString()));
        command.addAll(List.of(args));
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.resolve("bin").toFile())
                .redirectErrorStream(true);
        Map<String, String> environment = builder.environment();
        environment.clear();
        environment.put("PATH", folder.resolve("bin").toString());
        Process process = builder.start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
        return new Ran(process.exitValue(), text);
    }
}
