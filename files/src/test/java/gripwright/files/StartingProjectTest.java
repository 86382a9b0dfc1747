package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gripwright.model.FingerTendon;
import gripwright.model.Floating;
import gripwright.model.Grip;
import gripwright.model.Joint;
import gripwright.model.Project;
import gripwright.model.Scatter;
import gripwright.model.Spool;
import gripwright.model.Spread;
import gripwright.model.Transmission;
import gripwright.shape.Cylinder;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StartingProjectTest {
    @TempDir
    Path folder;

    @Test
    void readsBackAsWritten() {
        Project project = Folder.starting(folder).read();
        assertThat(project.hand().fingers()).extracting("name").containsExactly("left", "right", "thumb");
        assertThat(project.hand().palm().sizeX()).isEqualTo(0.09);
        assertThat(project.hand().palm().pad().length()).isEqualTo(0.08);
        assertThat(project.hand().friction().of("soft", "glass")).contains(new Spread(0.9, 0.2));
        assertThat(project.hand().friction().bone()).isEqualTo(new Spread(0.2, 0.05));
        assertThat(project.need().placement().x()).isEqualTo(new Scatter(Scatter.Law.NORMAL, 0.012));
        assertThat(project.need().wantedSuccess()).isEqualTo(0.9);
        assertThat(project.need().object("spray can").shape()).isEqualTo(new Cylinder(0.033, 0.08, 0.003));
        assertThat(project.need().object("spray can").massSpread()).isEqualTo(new Spread(0.31, 0.06));
        assertThat(project.need().object("bare bulb").squeezeForce()).hasValue(15);
    }

    @Test
    void likeCopiesAFingerAndReplacesItsBase() {
        Project project = Folder.starting(folder).read();
        var left = project.hand().fingers().get(0);
        var thumb = project.hand().fingers().get(2);
        assertThat(thumb.phalanges()).isEqualTo(left.phalanges());
        assertThat(thumb.joints()).isEqualTo(left.joints());
        assertThat(thumb.base().x()).isEqualTo(-0.035);
        assertThat(thumb.closesToward()).isZero();
        assertThat(left.closesToward()).isEqualTo(Math.PI, within(1e-15));
    }

    @Test
    void jointsAndDriveAreBound() {
        Project project = Folder.starting(folder).read();
        Joint pin = project.hand().fingers().get(0).joints().get(0);
        assertThat(pin.kind().bendingRate()).isEqualTo(0.10);
        assertThat(pin.kind().sidewaysRate()).hasValue(6);
        assertThat(pin.rest()).isEqualTo(Math.toRadians(25), within(1e-15));
        assertThat(pin.lower()).isEqualTo(Math.toRadians(-10), within(1e-15));
        var motor = project.hand().motors().get(0);
        assertThat(motor.pulls())
                .isInstanceOfSatisfying(
                        Floating.class,
                        f -> assertThat(f.branches())
                                .extracting("ratio", "to")
                                .containsExactly(
                                        org.assertj.core.api.Assertions.tuple(1.0, new FingerTendon("left")),
                                        org.assertj.core.api.Assertions.tuple(1.0, new FingerTendon("right")),
                                        org.assertj.core.api.Assertions.tuple(2.0, new FingerTendon("thumb"))));
        assertThat(motor.tendonStiffness()).isEqualTo(20_000);
        assertThat(motor.wrap().get("thumb")).isEqualTo(Math.toRadians(60), within(1e-15));
    }

    /** Source: E I / L by hand: 4e6 Pa * 0.018 * 0.004^3 / 12 / 0.008 = 0.048 N*m/rad = 48 N*mm/rad. */
    @Test
    void referenceFlexureRateIsListedAmongTheAssumptions() {
        Project project = Folder.starting(folder).read();
        assertThat(project.assumptions())
                .filteredOn(a -> a.where().contains("joints[1].flexure"))
                .singleElement()
                .satisfies(a -> assertThat(a.text()).startsWith("bending rate 48 N*mm/rad"));
    }

    /**
     * Source: Gent's relation worked by hand: 0.0981 (56 + 7.62336 * 20) / (0.137505 (254 - 2.54 * 20)) = 20.4506 /
     * 27.9410 = 0.7319 MPa.
     */
    @Test
    void referenceModulusFromHardnessIsListedWithItsRelation() {
        Project project = Folder.starting(folder).read();
        assertThat(project.hand().palm().pad().rubber().modulus()).isEqualTo(0.7319e6, within(100.0));
        assertThat(project.assumptions())
                .filteredOn(a -> a.where().equals("hand.yaml: rubbers.soft.hardness"))
                .singleElement()
                .satisfies(a -> assertThat(a.text())
                        .startsWith("modulus 731.9 kPa from 20 Shore A by A. N. Gent")
                        .contains("1958", "below 35 Shore A an estimate"));
    }

    @Test
    void nestedTreesAndSeveralMotorsAreBound() {
        Project nested = Folder.starting(folder)
                .hand(
                        "pulls: {floating: {left: 1, right: 1, thumb: 2}}",
                        "pulls: {floating: {thumb: 2, pair: {ratio: 1.5, spool: {left: 1, right: 1}}}}")
                .read();
        assertThat(nested.hand().motors().get(0).pulls())
                .isEqualTo(new Floating(List.of(
                        new Transmission.Branch(2, new FingerTendon("thumb")),
                        new Transmission.Branch(
                                1.5,
                                new Spool(List.of(
                                        new Transmission.Branch(1, new FingerTendon("left")),
                                        new Transmission.Branch(1, new FingerTendon("right"))))))));
    }

    @Test
    void gripsAreBound() {
        Project project = Folder.starting(folder).read();
        assertThat(project.hand().grip("wrap").stand()).isInstanceOfSatisfying(Grip.PalmToObject.class, s -> {
            assertThat(s.gap()).isEqualTo(0.02);
            assertThat(s.heightAboveTable()).isNaN();
        });
        assertThat(project.hand().grip("pinch").fingers()).containsExactly("left", "thumb");
        assertThat(project.hand().grip("top").fingers()).containsExactly("left", "right", "thumb");
        assertThat(project.hand().grip("top").turned().get("right")).isEqualTo(Math.toRadians(-30), within(1e-15));
    }

    @Test
    void assumptionsNameFileAndKeyAndAreNotRepeatedForCopies() {
        Project project = Folder.starting(folder).read();
        assertThat(project.assumptions())
                .extracting(Project.Assumption::where)
                .doesNotHaveDuplicates()
                .contains("hand.yaml: rubbers.soft.hardness", "need.yaml: objects.spray can.centre of mass")
                .noneMatch(where -> where.contains("fingers.right.joints"));
    }

    @Test
    void placesOfValuesAreKnown() throws Exception {
        Folder.starting(folder);
        Map<String, Place> places = ProjectReader.readMarked(folder).places();
        assertThat(places).containsKey("hand.yaml: fingers.left.joints[0].rest");
        Place rest = places.getOrDefault("hand.yaml: fingers.left.joints[0].rest", Place.START);
        String line = Files.readAllLines(folder.resolve("hand.yaml")).get(rest.line() - 1);
        assertThat(line.substring(rest.column() - 1, rest.endColumn() - 1)).isEqualTo("25 deg");
    }

    @Test
    void startingProjectIsSound() throws Exception {
        StartingProject.write(folder);
        Project project = ProjectReader.read(folder);
        assertThat(project.need().objects())
                .hasSize(4)
                .allSatisfy(o -> assertThat(o.grips()).hasSizeGreaterThan(1));
        assertThat(project.hand().grips()).hasSize(4);
    }

    @Test
    void nothingIsOverwritten() throws Exception {
        Files.writeString(folder.resolve("need.yaml"), "mine");
        assertThatThrownBy(() -> StartingProject.write(folder))
                .isInstanceOf(FileAlreadyExistsException.class)
                .hasMessageContaining("nothing is overwritten");
        assertThat(folder.resolve("hand.yaml")).doesNotExist();
        assertThat(folder.resolve("need.yaml")).hasContent("mine");
    }
}
