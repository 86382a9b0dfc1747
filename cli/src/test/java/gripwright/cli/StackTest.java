package gripwright.cli;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaFieldAccess;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.Architectures.LayeredArchitecture;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Holds the stack that DEVELOPING.md draws: arrows only downward, no input or output below the files. */
class StackTest {
    /** Bottom first; packages of one level may not use one another unless the second list says so. */
    private static final List<List<String>> LEVELS = List.of(
            List.of("check", "units", "math"),
            List.of("shape"),
            List.of("model", "stats", "pad", "signal"),
            List.of("mechanics", "contact", "drive"),
            List.of("closing"),
            List.of("study"),
            List.of("files", "report"),
            List.of("bench", "record"),
            List.of("cli"));

    /** Arrows within a level. */
    private static final Set<String> SIDEWAYS = Set.of(
            "units -> check",
            "math -> check",
            "report -> files",
            "pad -> model",
            "pad -> stats",
            "signal -> stats",
            "signal -> pad");

    private static final String[] CORE = {
        "gripwright.check..",
        "gripwright.units..",
        "gripwright.math..",
        "gripwright.shape..",
        "gripwright.model..",
        "gripwright.stats..",
        "gripwright.pad..",
        "gripwright.signal..",
        "gripwright.mechanics..",
        "gripwright.contact..",
        "gripwright.drive..",
        "gripwright.closing..",
        "gripwright.study.."
    };

    private static final JavaClasses CODE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("gripwright");

    @Test
    void everyPackageHasItsPlaceInTheStack() {
        Set<String> known = LEVELS.stream().flatMap(List::stream).collect(Collectors.toSet());
        assertThat(CODE.stream().map(StackTest::part)).isSubsetOf(known);
    }

    @Test
    void packagesHaveNoCycles() {
        slices().matching("gripwright.(*)..").should().beFreeOfCycles().check(CODE);
    }

    @Test
    void packagesWithinPackagesHaveNoCycles() {
        slices().matching("gripwright.(**)").should().beFreeOfCycles().check(CODE);
    }

    @Test
    void packagesUseOnlyWhatLiesBelowThem() {
        LayeredArchitecture stack = layeredArchitecture().consideringOnlyDependenciesInLayers();
        for (String name : LEVELS.stream().flatMap(List::stream).toList()) {
            stack = stack.optionalLayer(name).definedBy("gripwright." + name + "..");
        }
        List<String> below = new ArrayList<>();
        for (List<String> level : LEVELS) {
            for (String name : level) {
                String[] allowed = Stream.concat(
                                below.stream(),
                                level.stream().filter(other -> SIDEWAYS.contains(name + " -> " + other)))
                        .toArray(String[]::new);
                stack = allowed.length == 0
                        ? stack.whereLayer(name).mayNotAccessAnyLayer()
                        : stack.whereLayer(name).mayOnlyAccessLayers(allowed);
            }
            below.addAll(level);
        }
        stack.check(CODE);
    }

    @Test
    void coreDoesNoInputOrOutputAndReadsNoClock() {
        noClasses()
                .that()
                .resideInAnyPackage(CORE)
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "java.io..", "java.nio.file..", "java.nio.channels..", "java.net..", "java.util.logging..")
                .orShould()
                .dependOnClassesThat()
                .haveNameMatching("java\\.time\\.Clock")
                .orShould()
                .accessTargetWhere(readsTheSurroundings())
                .allowEmptyShould(true)
                .check(CODE);
    }

    @Test
    void onlyFilesAndRecordKnowTheLibrariesOfFileFormats() {
        noClasses()
                .that()
                .resideOutsideOfPackages("gripwright.files..", "gripwright.record..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.snakeyaml..", "tools.jackson..", "de.siegmar..")
                .check(CODE);
    }

    @Test
    void onlyRecordKnowsTheLibraryOfPorts() {
        noClasses()
                .that()
                .resideOutsideOfPackage("gripwright.record..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("com.fazecast..")
                .check(CODE);
    }

    @Test
    void onlyTheCommandLineKnowsTheLibraryOfCommands() {
        noClasses()
                .that()
                .resideOutsideOfPackage("gripwright.cli..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("picocli..")
                .orShould()
                .callMethod(System.class, "exit", int.class)
                .check(CODE);
    }

    /** Console, clock, environment, unseeded randomness. */
    private static DescribedPredicate<JavaAccess<?>> readsTheSurroundings() {
        Set<String> methods = Set.of(
                "java.lang.System.currentTimeMillis",
                "java.lang.System.nanoTime",
                "java.lang.System.getProperty",
                "java.lang.System.getenv",
                "java.lang.System.exit",
                "java.lang.Math.random",
                "java.time.Instant.now",
                "java.time.LocalDate.now",
                "java.time.LocalDateTime.now",
                "java.util.UUID.randomUUID",
                "java.util.Locale.getDefault");
        return describe("reads console, clock, environment or chance", access -> {
            String target = access.getTargetOwner().getName() + "." + access.getName();
            return methods.contains(target)
                    || access instanceof JavaFieldAccess
                            && Set.of("java.lang.System.out", "java.lang.System.err", "java.lang.System.in")
                                    .contains(target);
        });
    }

    private static String part(JavaClass c) {
        String name = c.getPackageName();
        String rest = name.length() > "gripwright.".length() ? name.substring("gripwright.".length()) : name;
        return rest.contains(".") ? rest.substring(0, rest.indexOf('.')) : rest;
    }
}
