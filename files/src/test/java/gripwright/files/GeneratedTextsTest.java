package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The schemas and the reference page; {@code -Dgripwright.write=true} writes the committed copies anew. */
class GeneratedTextsTest {
    private static final Path DOCS = Path.of("..", "docs");

    @TempDir
    Path path;

    @Test
    void committedCopiesAreCurrent() throws Exception {
        current(DOCS.resolve("schema").resolve("hand.schema.json"), Schemas.hand());
        current(DOCS.resolve("schema").resolve("need.schema.json"), Schemas.need());
        current(DOCS.resolve("schema").resolve("pads.schema.json"), Schemas.pads());
        current(DOCS.resolve("keys.md"), KeyPage.text());
    }

    private static void current(Path file, String text) throws Exception {
        if (Boolean.getBoolean("gripwright.write")) {
            Files.createDirectories(file.getParent());
            Files.writeString(file, text);
        }
        assertThat(file)
                .as("run `mvn test -pl files -am -Dtest=GeneratedTextsTest -Dgripwright.write=true"
                        + " -Dsurefire.failIfNoSpecifiedTests=false` to write it anew")
                .hasContent(text);
    }

    @Test
    void schemasAcceptTheStartingProject() {
        assertThat(errors(Schemas.hand(), StartingProject.text(ProjectReader.HAND)))
                .isEmpty();
        assertThat(errors(Schemas.need(), StartingProject.text(ProjectReader.NEED)))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            length: 70 mm | lenght: 70 mm
            length: 70 mm | length: 70
            length: 70 mm | length: -70 mm
            closes toward: 0 deg | closes toward: 0
            limits: [-10 deg, 110 deg] | limits: [-10 deg]
            when off: locked | when off: loose
            bone: 8 mm | boon: 8 mm
            approach: side | approach: below
            like: left, base | base
            hardness: 20 Shore A | hardness: 20 Shore A, modulus: 1 MPa
            floating: {left: 1, right: 1, thumb: 2} | floating: {left: 0, right: 1, thumb: 2}
            floating: {left: 1, right: 1, thumb: 2} | loose: {left: 1, right: 1, thumb: 2}
            """)
    void handSchemaRejectsWhatTheReaderRejects(String right, String wrong) {
        String text = Folder.text(ProjectReader.HAND);
        assertThat(text).contains(right);
        assertThat(errors(Schemas.hand(), text.replace(right, wrong))).isNotEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            x: 12 mm sd | x: 12 mm
            diameter: 66 mm | diameter: 66
            surface: painted metal | surfaces: painted metal
            stands: lying | stands: leaning
            mass: 210 g | mass: 210
            friction: 0.35 +- 0.05 | friction: -0.35
            success: 90 % | success: 1.5
            """)
    void needSchemaRejectsWhatTheReaderRejects(String right, String wrong) {
        String text = Folder.text(ProjectReader.NEED);
        assertThat(text).contains(right);
        assertThat(errors(Schemas.need(), text.replace(right, wrong))).isNotEmpty();
    }

    @Test
    void schemasAcceptNestedTreesAndPlainNumbers() {
        String hand = Folder.text(ProjectReader.HAND)
                .replace(
                        "pulls: {floating: {left: 1, right: 1, thumb: 2}}",
                        "pulls: {floating: {thumb: 2, pair: {ratio: 1, spool: {left: 1, right: 1}}}}")
                .replace("glass: 0.9 +- 0.2", "glass: 0.9");
        assertThat(errors(Schemas.hand(), hand)).isEmpty();
    }

    @Test
    void spellingsThatTheReaderTakesAreTakenByTheSchema() {
        String hand = Folder.text(ProjectReader.HAND)
                .replace("closes toward: 180 deg", "closes toward: 180\u00b0")
                .replace("limits: [-10 deg, 110 deg]", "limits: [\u221210 deg, 1.2e2 deg]")
                .replace("thickness: 5 mm", "thickness: 5000 \u00b5m")
                .replace("spring: 0.10 N*m/rad", "spring: 0.10 N\u00b7m/rad")
                .replace("bone: 7 mm", "bone: 7mm")
                .replace("painted metal: 0.7 +- 0.15", "painted metal: 70 % \u00b1 15 %");
        new Folder(path)
                .write("hand.yaml", hand)
                .write("need.yaml", Folder.text("need.yaml"))
                .read();
        assertThat(errors(Schemas.hand(), hand)).isEmpty();
    }

    @Test
    void everySectionHasAHeadingOfItsOwn() {
        assertThat(KeyPage.text().lines().filter(line -> line.startsWith("### ")))
                .doesNotHaveDuplicates();
    }

    @Test
    void everyKeyIsOnTheReferencePage() {
        assertThat(KeyPage.text())
                .contains("### joint", "| `moment arm` |", "### object", "| `squeeze at most` |", "### tube");
    }

    private static List<Error> errors(String schemaText, String yaml) {
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(schemaText, InputFormat.JSON);
        return schema.validate(yaml, InputFormat.YAML);
    }
}
