package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gripwright.math.Vec3;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The statics of a real closing, worked again from nothing but its JSON file: a body at rest has no force and no moment
 * left over (Newton), a joint at rest no moment about its axis (virtual work), and no contact pulls or leaves its
 * friction cone (Coulomb). Closed form; the arithmetic here shares nothing with the solver.
 */
class StaticsFromJsonTest {
    private static final double FORCE = 1e-4;
    private static final double MOMENT = 1e-6;

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    @SuppressWarnings("NullAway.Init")
    private JsonNode close;

    /** A contact force on one of its two bodies. */
    private record Load(String body, Vec3 point, Vec3 force) {
        Vec3 momentAbout(Vec3 origin) {
            return point.minus(origin).cross(force);
        }
    }

    @BeforeEach
    void closingOfTheStartingProject() throws IOException {
        Shell shell = new Shell(folder, Surroundings.SIMULATION);
        shell.run("new", "p");
        Shell.Ran ran = shell.run(
                "close",
                "p",
                "--object",
                "mug",
                "--grip",
                "wrap",
                "--offset",
                "4 mm, 2 mm",
                "--frames",
                "--json",
                "c.json");
        assertThat(ran.err()).isEmpty();
        assertThat(ran.out()).startsWith("\u25cf held");
        close = JsonMapper.shared().readTree(Files.readString(folder.resolve("c.json")));
    }

    @Test
    void realClosingKeepsItsSchema() throws IOException {
        assertThat(ResultSchemasTest.faults(SchemaCommand.Kind.close, folder.resolve("c.json")))
                .isEmpty();
    }

    @Test
    void referenceObjectIsAtRest() {
        Vec3 weight = vector(close.get("object").get("weight_N"));
        Vec3 centre = vector(close.get("object").get("centre_of_mass_m"));
        Vec3 force = weight;
        Vec3 moment = Vec3.ZERO;
        for (Load load : loads()) {
            if (load.body.equals("object")) {
                force = force.plus(load.force);
                moment = moment.plus(load.momentAbout(centre));
            }
        }
        assertThat(weight.length()).isGreaterThan(3); // 330 g, give or take
        assertThat(force.length()).isEqualTo(0, within(FORCE));
        // Of the order of the force left over times the size of the mug.
        assertThat(moment.length()).isEqualTo(0, within(0.1 * FORCE));
    }

    @Test
    void referenceEveryJointIsAtRest() {
        assertThat(close.get("joints").size()).isGreaterThan(6);
        for (JsonNode joint : close.get("joints")) {
            boolean turns = joint.get("motion").asString().equals("turns");
            Vec3 axis = vector(joint.get("axis"));
            Vec3 origin = vector(joint.get("origin_m"));
            double sum =
                    joint.get(turns ? "spring_moment_Nm" : "spring_force_N").asDouble()
                            + joint.get("moment_arm_m").asDouble()
                                    * joint.get("tension_N").asDouble();
            for (Load load : loads()) {
                if (carries(joint.get("body").asString(), load.body)) {
                    sum += axis.dot(turns ? load.momentAbout(origin) : load.force);
                }
            }
            String name = joint.get("name").asString();
            assertThat(sum).as(name).isEqualTo(0, within(turns ? MOMENT : FORCE));
            double residual = joint.get(turns ? "residual_Nm" : "residual_N").asDouble();
            assertThat(sum + residual).as(name).isEqualTo(0, within(1e-9));
        }
    }

    @Test
    void referenceContactsPushAndStayWithinTheirFriction() {
        assertThat(close.get("contacts").size()).isGreaterThan(5);
        for (JsonNode contact : close.get("contacts")) {
            double normal = contact.get("normal_force_N").asDouble();
            double tangential = vector(contact.get("tangential_force_N")).length();
            assertThat(normal).isNotNegative();
            assertThat(tangential).isLessThanOrEqualTo(contact.get("friction").asDouble() * normal * (1 + 1e-6) + 1e-9);
            assertThat(vector(contact.get("normal")).length()).isEqualTo(1, within(1e-9));
        }
    }

    private List<Load> loads() {
        List<Load> loads = new ArrayList<>();
        for (JsonNode contact : close.get("contacts")) {
            Vec3 force = vector(contact.get("normal"))
                    .times(contact.get("normal_force_N").asDouble())
                    .plus(vector(contact.get("tangential_force_N")));
            Vec3 point = vector(contact.get("point_m"));
            loads.add(new Load(contact.get("other").asString(), point, force));
            loads.add(new Load(contact.get("body").asString(), point, force.times(-1)));
        }
        return loads;
    }

    /** A joint of the arm carries the palm and with it all; one of a finger its phalanx and those farther out. */
    private static boolean carries(String carried, String body) {
        if (body.equals("object") || body.equals("table")) {
            return false;
        }
        if (carried.equals("palm")) {
            return true;
        }
        int cut = carried.lastIndexOf(' ');
        return body.startsWith(carried.substring(0, cut + 1))
                && Integer.parseInt(body.substring(cut + 1)) >= Integer.parseInt(carried.substring(cut + 1));
    }

    private static Vec3 vector(JsonNode node) {
        return new Vec3(
                node.get(0).asDouble(), node.get(1).asDouble(), node.get(2).asDouble());
    }
}
