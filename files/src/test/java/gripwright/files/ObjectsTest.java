package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.GraspObject;
import gripwright.model.Project;
import gripwright.shape.Box;
import gripwright.shape.Composite;
import gripwright.shape.Cylinder;
import gripwright.shape.Mesh;
import gripwright.shape.Shape;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Objects of need.yaml: every shape, how they stand, meshes and the catalogue. */
class ObjectsTest {
    @TempDir
    Path path;

    private Folder folder = new Folder(Path.of(""));

    @BeforeEach
    void start() {
        folder = Folder.starting(path);
    }

    private Folder objects(String lines) {
        String need = Folder.text("need.yaml");
        return folder.write("need.yaml", need.substring(0, need.indexOf("objects:")) + "objects:\n" + lines);
    }

    private GraspObject only(String shape) {
        Project project = objects("  it: {" + shape + ", surface: glass}\n").read();
        return project.need().objects().get(0);
    }

    /** Source: sizes as written, by hand: full extent along x, y, z. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            sphere: {diameter: 40 mm} | 40 | 40 | 40
            cylinder: {diameter: 40 mm, height: 60 mm} | 40 | 40 | 60
            cylinder: {diameter: 120 mm, height: 1.2 mm} | 120 | 120 | 1.2
            box: {size: [10 mm, 20 mm, 30 mm], edge: 1 mm} | 10 | 20 | 30
            capsule: {diameter: 20 mm, length: 60 mm} | 20 | 20 | 60
            ellipsoid: {size: [10 mm, 20 mm, 30 mm]} | 10 | 20 | 30
            ring: {outer diameter: 60 mm, thickness: 10 mm} | 60 | 60 | 10
            tube: {outer diameter: 60 mm, inner diameter: 40 mm, height: 20 mm} | 60 | 60 | 20
            parts: [{sphere: {diameter: 20 mm}, at: [0 mm, 0 mm, 30 mm]}, {sphere: {diameter: 20 mm}, at: [0 mm, 0 mm, -30 mm]}] | 20 | 20 | 80
            parts: [{cylinder: {diameter: 10 mm, height: 60 mm}, turned: [0 deg, 90 deg, 0 deg]}] | 60 | 10 | 10
            """)
    void referenceExtentsOfShapes(String shape, double x, double y, double z) {
        Shape read = only(shape + ", mass: 100 g").shape();
        assertThat(full(read, Vec3.X)).isEqualTo(x / 1000, within(1e-6));
        assertThat(full(read, Vec3.Y)).isEqualTo(y / 1000, within(1e-6));
        assertThat(full(read, Vec3.Z)).isEqualTo(z / 1000, within(1e-6));
    }

    @Test
    void cupIsWiderAtItsTop() {
        Shape cup = only("cup: {bottom diameter: 50 mm, top diameter: 80 mm, height: 90 mm, edge: 0 mm}, mass: 100 g")
                .shape();
        assertThat(full(cup, Vec3.X)).isEqualTo(0.08, within(1e-4));
        assertThat(cup.distance(0.032, 0, 0.04)).isNegative();
        assertThat(cup.distance(0.032, 0, -0.04)).isPositive();
    }

    @Test
    void partsAreTurnedAboutXThenYThenZ() {
        Shape shape = only("parts: [{box: {size: [10 mm, 20 mm, 30 mm]}, turned: [90 deg, 90 deg, 0 deg]}], mass: 1 g")
                .shape();
        // By hand: x turns (10, 20, 30) to (10, 30, 20), then y turns that to (20, 30, 10).
        assertThat(shape).isInstanceOf(Composite.class);
        assertThat(full(shape, Vec3.X)).isEqualTo(0.02, within(1e-6));
        assertThat(full(shape, Vec3.Y)).isEqualTo(0.03, within(1e-6));
        assertThat(full(shape, Vec3.Z)).isEqualTo(0.01, within(1e-6));
    }

    @Test
    void lyingPutsTheOwnAxisAlongTableY() {
        Rotation lying = only("cylinder: {diameter: 40 mm, height: 60 mm}, mass: 1 g, stands: lying")
                .stance();
        near(lying.apply(Vec3.Z), Vec3.Y);
        Rotation turned = only("cylinder: {diameter: 40 mm, height: 60 mm}, mass: 1 g, stands: lying, turned: 90 deg")
                .stance();
        near(turned.apply(Vec3.Z), Vec3.X.times(-1));
    }

    @Test
    void upsideDownTurnsTheAxisRound() {
        near(
                only("sphere: {diameter: 40 mm}, mass: 1 g, stands: upside down")
                        .stance()
                        .apply(Vec3.Z),
                Vec3.Z.times(-1));
    }

    /** A lying mug whose handle (along its own x) is rolled by 90 degrees: y, laid down, points below the table plane. */
    @Test
    void rolledTurnsBeforeLayingDown() {
        Rotation turn = only("sphere: {diameter: 40 mm}, mass: 1 g, stands: lying, rolled: -90 deg")
                .stance();
        near(turn.apply(Vec3.X), Vec3.Z);
    }

    @ParameterizedTest
    @CsvSource({"10, 20, 30", "30, 20, 10", "20, 10, 30", "10, 30, 20", "30, 10, 20", "20, 30, 10"})
    void flatPutsTheSmallestSizeUprightAndTheLargestAlongY(double x, double y, double z) {
        GraspObject box =
                only("box: {size: [" + x + " mm, " + y + " mm, " + z + " mm], edge: 0 mm}, mass: 1 g, stands: flat");
        Vec3 largest = x == 30 ? Vec3.X : y == 30 ? Vec3.Y : Vec3.Z;
        Vec3 smallest = x == 10 ? Vec3.X : y == 10 ? Vec3.Y : Vec3.Z;
        near(box.stance().apply(largest), Vec3.Y);
        near(box.stance().apply(smallest), Vec3.Z);
        Vec3 third = box.stance().column(0).cross(box.stance().column(1));
        near(third, box.stance().column(2));
    }

    @Test
    void squeezeIsAForceOrAPressure() {
        assertThat(only("sphere: {diameter: 40 mm}, mass: 1 g, squeeze at most: 15 N")
                        .squeezeForce())
                .hasValue(15);
        GraspObject soft = only("sphere: {diameter: 40 mm}, mass: 1 g, squeeze at most: 40 kPa");
        assertThat(soft.squeezePressure()).hasValue(40_000);
        assertThat(soft.squeezeForce()).isEmpty();
    }

    @Test
    void catalogueGivesShapeAndMassWithTheirSource() {
        Project project =
                objects("  cell: {from: cell R20 / D, surface: glass}\n").read();
        GraspObject cell = project.need().object("cell");
        assertThat(cell.mass()).isEqualTo(0.140, within(1e-9));
        assertThat(cell.shape())
                .isInstanceOfSatisfying(
                        Cylinder.class, c -> assertThat(c.radius()).isEqualTo(0.0171, within(1e-9)));
        assertThat(project.assumptions())
                .anySatisfy(a -> assertThat(a.where() + " " + a.text())
                        .contains("objects.cell.mass", "140 g", "IEC 60086", "memory"));
    }

    @Test
    void massBesideTheCatalogueWins() {
        GraspObject cell = only("from: cell R20 / D, mass: 150 g +- 5 g");
        assertThat(cell.mass()).isEqualTo(0.150, within(1e-9));
        assertThat(cell.massSpread().deviation()).isEqualTo(0.005, within(1e-9));
    }

    @Test
    void unknownNameOfTheCatalogueNamesItsNeighbours() {
        Fault fault = objects("  cell: {from: cell R20 / E, surface: glass}\n").fault();
        assertThat(fault.message()).contains("the catalogue has no object 'cell R20 / E'", "cell R20 / D");
        assertThat(fault.suggestion()).isEqualTo("cell R20 / D");
    }

    @Test
    void meshIsReadInMillimetresUnlessToldOtherwise() throws IOException {
        Files.writeString(path.resolve("cube.stl"), cube(20, true));
        Project project =
                objects("  it: {mesh: cube.stl, mass: 90 g, surface: glass}\n").read();
        Shape cube = project.need().object("it").shape();
        assertThat(cube).isInstanceOf(Mesh.class);
        assertThat(full(cube, Vec3.X)).isEqualTo(0.020, within(1e-6));
        assertThat(project.assumptions())
                .anySatisfy(a -> assertThat(a.text()).contains("numbers of the STL file are taken as mm"));
        assertThat(full(only("mesh: cube.stl, mesh unit: cm, mass: 90 g").shape(), Vec3.X))
                .isEqualTo(0.2, within(1e-5));
    }

    @Test
    void meshWithAHoleIsRefused() throws IOException {
        Files.writeString(path.resolve("open.stl"), cube(20, false));
        Fault fault =
                objects("  it: {mesh: open.stl, mass: 90 g, surface: glass}\n").fault();
        assertThat(fault.message()).contains("hole");
        assertThat(fault.expected()).startsWith("a closed surface");
    }

    @Test
    void meshInAWrongUnitIsRefused() throws IOException {
        Files.writeString(path.resolve("cube.stl"), cube(20, true));
        Fault fault = objects("  it: {mesh: cube.stl, mesh unit: m, mass: 90 g, surface: glass}\n")
                .fault();
        assertThat(fault.message()).isEqualTo("the mesh is 20000 mm in its largest size");
        assertThat(fault.expected()).contains("is `mesh unit` right?");
    }

    @Test
    void linkOutOfTheFolderIsNotFollowed(@TempDir Path elsewhere) throws IOException {
        Path secret = Files.writeString(elsewhere.resolve("secret.stl"), cube(20, true));
        Files.createSymbolicLink(path.resolve("link.stl"), secret);
        Fault fault =
                objects("  it: {mesh: link.stl, mass: 90 g, surface: glass}\n").fault();
        assertThat(fault.message()).isEqualTo("'link.stl' leads out of the project folder");
    }

    @Test
    void meshUnitWithoutAMeshIsRefused() {
        Fault fault = objects("  it: {sphere: {diameter: 40 mm}, mesh unit: mm, mass: 90 g, surface: glass}\n")
                .fault();
        assertThat(fault.message()).isEqualTo("'mesh unit' without a mesh");
    }

    @Test
    void namesWithDotsAndBlanksStayWhole() {
        Project project = objects("  M3.5 bolt, long: {box: {size: [4 mm, 4 mm, 30 mm]}, mass: 3 g, surface: glass}\n")
                .read();
        assertThat(project.need().objects().get(0).name()).isEqualTo("M3.5 bolt, long");
        assertThat(project.need().objects().get(0).shape()).isInstanceOf(Box.class);
    }

    @Test
    void everyDefaultUsedIsListed() {
        Project project = objects("  it: {sphere: {diameter: 40 mm}, mass: 90 g, surface: glass}\n")
                .read();
        assertThat(project.assumptions().stream()
                        .map(Project.Assumption::where)
                        .filter(w -> w.startsWith("need.yaml: objects.it"))
                        .toList())
                .containsExactlyInAnyOrderElementsOf(List.of(
                        "need.yaml: objects.it.squeeze at most",
                        "need.yaml: objects.it.stands",
                        "need.yaml: objects.it.turned",
                        "need.yaml: objects.it.grips",
                        "need.yaml: objects.it.weight",
                        "need.yaml: objects.it.centre of mass"));
    }

    private static double full(Shape shape, Vec3 axis) {
        return shape.extent(axis) + shape.extent(axis.times(-1));
    }

    private static void near(Vec3 found, Vec3 expected) {
        assertThat(found.minus(expected).length())
                .as("%s, expected %s", found, expected)
                .isLessThan(1e-12);
    }

    /** A cube as text STL, with or without its last facet. */
    private static String cube(double size, boolean closed) {
        int[][] faces = {
            {0, 2, 1}, {1, 2, 3}, {4, 5, 6}, {5, 7, 6}, {0, 1, 4}, {1, 5, 4}, {2, 6, 3}, {3, 6, 7}, {0, 4, 2},
            {2, 4, 6}, {1, 3, 5}, {3, 7, 5}
        };
        StringBuilder text = new StringBuilder("solid cube\n");
        for (int f = 0; f < faces.length - (closed ? 0 : 1); f++) {
            text.append("facet normal 0 0 0\nouter loop\n");
            for (int c : faces[f]) {
                text.append("vertex ").append((c & 1) * size).append(' ');
                text.append((c >> 1 & 1) * size)
                        .append(' ')
                        .append((c >> 2) * size)
                        .append('\n');
            }
            text.append("endloop\nendfacet\n");
        }
        return text.append("endsolid cube\n").toString();
    }
}
