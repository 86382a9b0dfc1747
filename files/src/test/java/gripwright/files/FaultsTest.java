package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.model.Project;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Wrong values in files that are otherwise sound: each fault with its place, message and help. */
class FaultsTest {
    @TempDir
    Path path;

    private Folder folder = new Folder(Path.of(""));

    @BeforeEach
    void start() {
        folder = Folder.starting(path);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            length: 70 mm | length: 70 | length: '70' has no unit | a length, such as 12 mm | 70 mm
            length: 70 mm | length: 70 N | length: '70 N' is a force, not a length | a length, such as 12 mm |
            spring: 0.10 N*m/rad | spring: 0.10 N*m | spring: '0.10 N*m' is a torque, not a turning stiffness | a turning stiffness, such as 0.12 N*m/rad |
            length: 70 mm | lenght: 70 mm | unknown key 'lenght' in phalanges[0] | one of length, width, bone, pad, tip | length
            length: 70 mm | length: -70 mm | length is -70 mm | a length above 0 |
            length: 70 mm | length: 0 mm | length is 0 mm | a length above 0 |
            length: 70 mm | length: NaN mm | length: 'NaN mm' is not a number one can compute with | a length, such as 12 mm |
            length: 70 mm | length: .nan | length: '.nan' is not a number one can compute with | a length, such as 12 mm |
            length: 70 mm | length: 1e300 mm | length: '1e300 mm' is far too large | a length of 0 or of 0.1 um to 100 m |
            length: 70 mm | length: 70 mn | length: 'mn' is not a known unit | a length, such as 12 mm | mm
            limits: [-10 deg, 110 deg] | limits: [110 deg, -10 deg] | the limits are reversed: 110 deg is not below -10 deg | [lower stop, upper stop] |
            limits: [-10 deg, 110 deg] | limits: [-10 deg] | limits has 1 entry | [25 deg, 25 deg]: lower and upper hard stop |
            length: 56 mm | length: 76 mm | the pad is 76 mm long, longer than the 70 mm it sits on | a length of at most 70 mm |
            rest: 25 deg | rest: [25 deg] | rest is a list | an angle from -360 deg to 360 deg, such as 25 deg |
            hardness: 20 Shore A | hardness: 20 Shore | hardness: 'Shore' is not a known unit | a hardness, such as 20 Shore A | Shore A
            hardness: 20 Shore A | hardness: 120 Shore A | hardness is 120 Shore A | a hardness from 1 Shore A to 99 Shore A |
            {hardness: 20 Shore A} | {hardness: 20 Shore A, modulus: 1 MPa} | soft has both 'modulus' and 'hardness' | exactly one of modulus, hardness |
            painted metal: 0.7 +- 0.15 | painted metal: -0.7 | painted metal is -0.7 | a plain number from 0 to 10 |
            fingers: [left, thumb] | fingers: [left, thum] | there is no finger called 'thum' | one of left, right, thumb | thumb
            fingers: [left, thumb] | fingers: [left, left] | a finger is named twice | each finger once |
            {like: left, base: {at: [-35 | {like: lft, base: {at: [-35 | like is 'lft' | the name of another entry: left, right | left
            thumb: 2} | thum: 2} | there is no finger called 'thum' | one of left, right, thumb | thumb
            left: 1, right: 1, thumb: 2 | left: 1, right: 1 | finger 'thumb' is pulled by no motor | its name in the `pulls` of a motor under `drive` |
            {floating: {left: 1, right: 1, thumb: 2}} | {floating: {left: 1, right: 1, thumb: 2, pair: {ratio: 1, spool: {left: 1}}}} | finger 'left' is pulled a second time | each finger in one place of one motor's tree |
            floating: {left: 1, right: 1, thumb: 2} | loose: {left: 1, right: 1, thumb: 2} | pulls has the keys loose | one of floating, spool |
            when off: locked | when off: lokced | when off is 'lokced' | one of locked, powered | locked
            tips above table: 3 mm | tips above table: 3 mm, palm to object: 3 mm | pinch has both 'palm to object' and 'tips above table' | exactly one of palm to object, tips above table |
            side, palm to object: 20 mm, height: middle | side, tips above table: 20 mm | 'tips above table' in a grip from the side | 'palm to object' and 'height' for a side approach |
            rubber: soft}} | rubber: soft}, tip: round} | phalanx 1 of 2 has a round tip | a round tip on the last phalanx only |
            rubber: soft}, tip: round} | rubber: soft}}\\n      - {length: 30 mm, width: 20 mm, bone: 7 mm, pad: {thickness: 4 mm, rubber: soft}} | finger 'left' has 2 joints for 3 phalanges | one joint for each phalanx |
            thumb: 2}} | left2: {ratio: 2, floating: {thumb: 1}}, thumb: {ratio: 1, spool: {thumb: 1}}}} | branch 'thumb' has branches of its own but the name of a finger | another name for the branch |
            thumb: 2}} | more: {floating: {thumb: 1}}}} | key 'ratio' is missing in branch 'more' | ratio: a plain number above 0 and at most 100, such as 0.5 |
            name: Bench hand, three fingers, one motor | name: [a, b] | name is a list | a text on one line |
            name: Bench hand, three fingers, one motor | name: "" | the name is empty | 1 to 60 characters on one line |
            approach: side | approach: above | 'height' in a grip from above | 'palm to object' or 'tips above table' alone; they set the height |
            rubber: soft, thickness: 5 mm | rubber: sofd, thickness: 5 mm | there is no rubber called 'sofd' | one of soft | soft
            greatest tension: 60 N | greatest tension: | key 'greatest tension' has no value | a force above 0, such as 15 N |
            wrap: {left: 90 deg, right: 90 deg, thumb: 60 deg} | wrap: {left: 90 deg, right: 90 deg, tumb: 60 deg} | there is no finger called 'tumb' | one of left, right, thumb | thumb
            greatest tension: 60 N | greatest tension: 60,5 N | greatest tension: a comma in a number | a decimal point | 60.5 N
            """)
    void wrongValueInTheHandIsExplained(
            String right, String wrong, String message, String expected, String suggestion) {
        folder.hand(right, wrong.replace("\\n", "\n"));
        assertThat(folder.faults()).anySatisfy(fault -> {
            assertThat(fault.file()).isEqualTo("hand.yaml");
            assertThat(fault.message()).isEqualTo(message);
            assertThat(fault.expected()).isEqualTo(expected);
            assertThat(fault.suggestion()).isEqualTo(suggestion);
            assertThat(fault.sourceLine()).isNotBlank();
        });
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            x: 12 mm sd | x: 12 mm | x: '12 mm' does not say how it scatters | a length with its law, such as 12 mm sd or 12 mm uniform | 12 mm sd
            mass: 210 g | mass: 0 g | mass is 0 g | a mass above 0 |
            mass: 210 g | mass: -210 g | mass is -210 g | a mass above 0 |
            mass: 210 g | weight: 1 | key 'mass' is missing in tape roll | mass: a mass above 0, such as 180 g or 180 g +- 2 g |
            grips: [top, pinch] | grips: [top, pinhc] | there is no grip called 'pinhc' | one of wrap, top, tripod, pinch | pinch
            surface: glass | surface: glas | there is no surface called 'glas' | one of painted metal, glass, glazed clay, cardboard | glass
            stands: lying | stands: leaning | stands is 'leaning' | one of upright, upside down, lying, flat |
            squeeze at most: 15 N | squeeze at most: 15 mm | squeeze at most: '15 mm' is a length, not a force | a force, such as 15 N |
            success: 90 % | success: 90 | success is 90 | a share above 0 and at most 100 % |
            centre of mass: [4 mm, | centre of mass: [400 mm, | the centre of mass lies outside the object | a point at most 74 mm from the middle of the shape's own frame |
            edge: 3 mm | edge: 40 mm | edge is 40 mm, more than half of the smallest size | an edge radius of at most 33 mm |
            inner diameter: 76 mm | inner diameter: 106 mm | inner diameter is 106 mm: no wall is left | less than the outer diameter |
            cylinder: {diameter: 66 mm, height: 160 mm, edge: 3 mm} | mesh: can.stl | there is no file 'can.stl' in the project folder | an STL file in the project folder, such as bracket.stl |
            cylinder: {diameter: 66 mm, height: 160 mm, edge: 3 mm} | mesh: ../can.stl | '../can.stl' is outside the project folder | an STL file in the project folder, such as bracket.stl |
            cylinder: {diameter: 66 mm, height: 160 mm, edge: 3 mm} | mesh: /etc/passwd | '/etc/passwd' is outside the project folder | an STL file in the project folder, such as bracket.stl |
            cylinder: {diameter: 66 mm, height: 160 mm, edge: 3 mm} | box: {size: [1 mm, 2 mm]} | size has 2 entries | [12 mm, 12 mm, 12 mm]: full size along its own x, y, z, each a length above 0 |
            """)
    void wrongValueInTheNeedIsExplained(
            String right, String wrong, String message, String expected, String suggestion) {
        folder.need(right, wrong);
        Fault fault = folder.fault();
        assertThat(fault.file()).isEqualTo("need.yaml");
        assertThat(fault.message()).isEqualTo(message);
        assertThat(fault.expected()).isEqualTo(expected);
        assertThat(fault.suggestion()).isEqualTo(suggestion);
    }

    @Test
    void faultShowsItsLineWithAMarkUnderTheCharacter() {
        folder.need("mass: 210 g", "mass: 210 gr");
        assertThat(folder.fault().text()).isEqualTo("""
                need.yaml:21:15: mass: 'gr' is not a known unit
                  21 |     mass: 210 gr
                     |               ^
                  expected: a mass, such as 180 g
                  did you mean 'g'?""");
    }

    @Test
    void faultsOfBothFilesAreReportedAtOnce() {
        folder.hand("greatest tension: 60 N", "greatest tension: 60 m")
                .hand("length: 70 mm", "lenght: 70 mm")
                .hand("fingers: [left, thumb]", "fingers: [left, pinky]")
                .need("mass: 210 g", "mass: 0 g")
                .need("surface: glass", "surface: velvet");
        List<Fault> faults = folder.faults();
        assertThat(faults)
                .extracting(Fault::message)
                .containsExactly(
                        "unknown key 'lenght' in phalanges[0]",
                        "greatest tension: '60 m' is a length, not a force",
                        "there is no finger called 'pinky'",
                        "mass is 0 g",
                        "there is no surface called 'velvet'");
        assertThat(faults).allSatisfy(f -> assertThat(f.line()).isPositive());
    }

    @Test
    void misspeltKeyIsNotMissedAsWell() {
        folder.need("tube:", "tub:").hand("approach: side", "aproach: side");
        assertThat(folder.faults())
                .extracting(Fault::message)
                .containsExactly("unknown key 'aproach' in wrap", "unknown key 'tub' in tape roll");
    }

    @Test
    void duplicateKeyNamesItsFirstLine() {
        folder.need("mass: 210 g", "mass: 210 g\n    mass: 220 g");
        Fault fault = folder.fault();
        assertThat(fault.message()).isEqualTo("key 'mass' is given twice, first in line 21");
        assertThat(fault.line()).isEqualTo(22);
    }

    @Test
    void zeroFingersAreRefused() {
        String hand = Folder.text("hand.yaml");
        int from = hand.indexOf("\nfingers:");
        int to = hand.indexOf("\n# One motor");
        folder.write("hand.yaml", hand.substring(0, from) + "\nfingers: {}\n" + hand.substring(to));
        assertThat(folder.faults()).anySatisfy(fault -> {
            assertThat(fault.message()).isEqualTo("fingers has no entries");
            assertThat(fault.expected()).isEqualTo("a block of 1 to 5 fingers");
        });
    }

    @Test
    void surfaceMissingForARubberNamesBoth() {
        folder.hand("soft: {hardness: 20 Shore A}", "soft: {hardness: 20 Shore A}\n  hard: {modulus: 5 MPa}")
                .hand("bone friction", "  hard: {glass: 0.5, cardboard: 0.4, glazed clay: 0.4}\nbone friction")
                .hand("pad: {rubber: soft, thickness: 5 mm", "pad: {rubber: hard, thickness: 5 mm");
        Fault fault = folder.fault();
        assertThat(fault.message())
                .isEqualTo("rubber 'hard' of the pads has no friction on surface 'painted metal' of 'spray can'");
        assertThat(fault.file()).isEqualTo("need.yaml");
    }

    @Test
    void likeInACircleIsRefused() {
        folder.hand("{like: left, base: {at: [35 mm, -25", "{like: thumb, base: {at: [35 mm, -25")
                .hand("{like: left, base: {at: [-35", "{like: right, base: {at: [-35");
        assertThat(folder.faults())
                .extracting(Fault::message)
                .contains("like goes round in a circle: right, thumb, right");
    }

    @Test
    void wrapOfAFingerOfAnotherMotorIsRefused() {
        folder.hand("pulls: {floating: {left: 1, right: 1, thumb: 2}}", "pulls: {floating: {left: 1, right: 1}}")
                .hand(
                        "    when off: locked",
                        "  second:\n    pulls: thumb\n    greatest tension: 60 N\n"
                                + "    tendon: {stiffness: 20 N/mm, sheath friction: 0.1}");
        assertThat(folder.fault().message()).isEqualTo("wrap of finger 'thumb', which motor 'main' does not pull");
    }

    @Test
    void zeroFrictionIsAllowedAndNoted() {
        Project project = folder.hand("glass: 0.9 +- 0.2", "glass: 0").read();
        assertThat(project.assumptions())
                .contains(new Project.Assumption(
                        "hand.yaml: friction.soft.glass", "friction 0, as written: nothing is held by friction here"));
    }

    @Test
    void objectLargerThanTheHandIsAllowed() {
        Project project = folder.need("diameter: 66 mm, height: 160 mm", "diameter: 800 mm, height: 900 mm")
                .read();
        assertThat(project.need().object("spray can").shape().boundingRadius()).isGreaterThan(0.5);
    }

    @Test
    void manyFaultsAreAllListedTheLaterOnesInOneLineEach() {
        ProjectFaults faults = new ProjectFaults(manyFaults(300));
        assertThat(faults.faults()).hasSize(300);
        String message = String.valueOf(faults.getMessage());
        assertThat(message.lines().filter(l -> l.startsWith("need.yaml:"))).hasSize(300);
        assertThat(message.lines().filter(l -> l.contains("expected: "))).hasSize(50);
        assertThat(new ProjectFaults(manyFaults(1300)).getMessage()).endsWith("and 300 more");
    }

    private List<Fault> manyFaults(int count) {
        StringBuilder need = new StringBuilder(Folder.text("need.yaml"));
        for (int i = 0; i < count; i++) {
            need.append("key").append(i).append(": 1\n");
        }
        folder.write("need.yaml", need.toString());
        return folder.faults();
    }
}
