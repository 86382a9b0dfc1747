package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that are not what they should be at all: size, encoding, YAML itself. */
class BadInputTest {
    private static final String NOISE = "[]{}:,#&*!|>'\"%@`-? \n\t0a\u00ff";

    @TempDir
    Path path;

    private Folder folder = new Folder(Path.of(""));

    @BeforeEach
    void start() {
        folder = Folder.starting(path);
    }

    @Test
    void missingFolderAndFilesAreNamed() {
        Folder nowhere = new Folder(path.resolve("nowhere"));
        assertThat(nowhere.faults())
                .extracting(Fault::message)
                .containsExactly(
                        "there is no file hand.yaml in " + nowhere.path(),
                        "there is no file need.yaml in " + nowhere.path());
    }

    @Test
    void directoryInPlaceOfAFileIsRefused() throws IOException {
        Files.delete(path.resolve("need.yaml"));
        Files.createDirectory(path.resolve("need.yaml"));
        assertThat(folder.fault().message()).isEqualTo("need.yaml is not a file");
    }

    @Test
    void fileOf50MegabytesIsRefusedQuicklyBySize() throws IOException {
        try (RandomAccessFile file =
                new RandomAccessFile(path.resolve("need.yaml").toFile(), "rw")) {
            file.setLength(50_000_000);
        }
        Fault fault = Assertions.assertTimeoutPreemptively(Duration.ofSeconds(2), () -> folder.fault());
        assertThat(fault.message()).isEqualTo("need.yaml has 50000000 bytes");
        assertThat(fault.expected()).startsWith("at most 1000000 bytes");
    }

    @Test
    void emptyFileIsSaidToBeEmpty() {
        folder.write("need.yaml", "");
        assertThat(folder.fault().message()).isEqualTo("need.yaml is empty");
        folder.write("need.yaml", " \n\n");
        assertThat(folder.fault().message()).isEqualTo("need.yaml is empty");
        folder.write("need.yaml", "# nothing yet\n");
        assertThat(folder.fault().message()).isEqualTo("need.yaml holds only comments");
    }

    @Test
    void bytesThatAreNotUtf8AreShownWithTheirPlace() {
        byte[] text = "name: Werkbank f\u00fcr alle\n".getBytes(StandardCharsets.ISO_8859_1);
        folder.write("need.yaml", text);
        Fault fault = folder.fault();
        assertThat(fault.message()).isEqualTo("byte 17 (0xfc) is not valid UTF-8");
        assertThat(fault.line()).isEqualTo(1);
        assertThat(fault.column()).isEqualTo(17);
    }

    @Test
    void tabsInTheIndentationAreShownLineByLine() {
        folder.write("need.yaml", "name: a\nsurface:\n\tfriction: 0.3\nhandling:\n \tlift: 10 mm\n");
        assertThat(folder.faults()).extracting(Fault::message).containsOnly("a tab in the indentation");
        assertThat(folder.faults()).extracting(Fault::line).containsExactly(3, 5);
        assertThat(folder.faults()).extracting(Fault::column).containsExactly(1, 2);
        assertThat(folder.faults().get(0).expected()).contains("YAML does not allow tabs");
    }

    @Test
    void aliasBombIsRefusedAtItsFirstAnchor() {
        StringBuilder bomb = new StringBuilder("a0: &a0 [x, x]\n");
        for (int i = 1; i < 40; i++) {
            String before = "*a" + (i - 1);
            bomb.append("a").append(i).append(": &a").append(i);
            bomb.append(" [").append(before).append(", ").append(before).append("]\n");
        }
        folder.write("need.yaml", bomb.toString());
        Fault fault = Assertions.assertTimeoutPreemptively(Duration.ofSeconds(2), () -> folder.fault());
        assertThat(fault.message()).isEqualTo("an anchor (&name)");
        assertThat(fault.expected()).isEqualTo("no anchors; `like:` copies a finger");
        assertThat(fault.line()).isEqualTo(1);
    }

    @Test
    void deepNestingAndEndlessListsAreRefused() {
        folder.write("need.yaml", "a: " + "[".repeat(100_000));
        assertThat(folder.fault().message()).isEqualTo("blocks nested more than 30 deep");
        folder.write("need.yaml", "a: [" + "1,".repeat(60_000) + "1]");
        assertThat(folder.fault().message()).isEqualTo("more than 50000 values");
    }

    @Test
    void tagsDocumentsAndOddKeysAreRefused() {
        folder.write("need.yaml", "name: !!java.lang.Runtime x\n");
        assertThat(folder.fault().message()).startsWith("a tag (");
        folder.write("need.yaml", "? [a, b]\n: c\n");
        assertThat(folder.fault().message()).isEqualTo("a key that is a list");
        folder.write("need.yaml", Folder.text("need.yaml") + "\n---\nname: two\n");
        assertThat(folder.fault().message()).isEqualTo("a second document starts here");
    }

    @Test
    void textThatIsNotYamlIsShownWhereItBreaks() {
        folder.need("handling: {lift: 150 mm,", "handling: {lift: 150 mm");
        Fault fault = folder.fault();
        assertThat(fault.message()).startsWith("this is not YAML: ");
        assertThat(fault.sourceLine()).contains("handling");
    }

    @Test
    void controlCharactersDoNotReachTheTerminal() {
        folder.write("need.yaml", "name: \"\\e[31mred\"\n\"bad\\e[2Jkey\": 1\n");
        assertThat(folder.faults()).isNotEmpty();
        assertThat(new ProjectFaults(folder.faults()).getMessage()).doesNotContain("\u001b");
        folder.write("need.yaml", "name: \u001b[31mred\n");
        assertThat(folder.fault().text()).doesNotContain("\u001b").contains("this is not YAML");
    }

    @Test
    void listOrTextInPlaceOfKeysIsRefused() {
        folder.write("need.yaml", "- a\n- b\n");
        assertThat(folder.fault().message()).isEqualTo("need.yaml is a list");
        folder.write("need.yaml", "just words\n");
        assertThat(folder.fault().message()).isEqualTo("need.yaml is 'just words'");
    }

    @Test
    void veryLongLinesAreShownAroundTheMark() {
        folder.need("mass: 40 g +- 3 g", "mass: 40" + " ".repeat(100) + "# " + "x".repeat(5000));
        assertThat(folder.fault().text().lines())
                .allSatisfy(line -> assertThat(line).hasSizeLessThan(200));
    }

    /** Damaged files must end in faults or be read, never in another exception. */
    @Test
    void propertyDamagedFilesEndInFaults() {
        long seed = 20253;
        Random random = new Random(seed);
        for (String file : new String[] {"hand.yaml", "need.yaml"}) {
            byte[] sound = Folder.text(file).getBytes(StandardCharsets.UTF_8);
            for (int trial = 0; trial < 150; trial++) {
                byte[] damaged = sound.clone();
                for (int i = random.nextInt(6); i >= 0; i--) {
                    damaged[random.nextInt(damaged.length)] = (byte) NOISE.charAt(random.nextInt(NOISE.length()));
                }
                folder.write(file, damaged);
                int number = trial;
                Assertions.assertDoesNotThrow(
                        () -> folder.faults(), () -> "seed " + seed + " file " + file + " trial " + number);
            }
            folder.write(file, sound);
        }
    }
}
