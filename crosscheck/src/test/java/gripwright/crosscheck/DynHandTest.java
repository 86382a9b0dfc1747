package gripwright.crosscheck;

import gripwright.truth.Reference;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

class DynHandTest {
    @Test
    void all() {
        JsonNode d = Reference.json("closings/planar_cases.json");
        for (JsonNode c : Reference.elements(d.get("cases")).toList()) {
            long t = System.nanoTime();
            DynHand.End e = new DynHand(d.get("hand"), c).close();
            StringBuilder s = new StringBuilder("CASE " + c.get("case") + c.get("disc") + " stop "
                    + c.get("rigid").get("stop_Nm") + " cap " + c.get("rigid").get("captured") + " ms "
                    + (System.nanoTime() - t) / 1000000);
            String[] N = {"palm", "L.prox", "L.dist", "R.prox", "R.dist"};
            for (int j = 0; j < 4; j++)
                s.append(String.format(
                        java.util.Locale.ROOT,
                        " %.3f/%.3f",
                        Math.toDegrees(e.angles()[j]),
                        c.get("rigid").get("joint_deg").get(j).asDouble()));
            for (int j = 0; j < 5; j++)
                s.append(String.format(
                        java.util.Locale.ROOT,
                        " %.3f/%.3f",
                        e.forces()[j],
                        c.get("rigid").get("forces_N").get(N[j]).asDouble()));
            System.out.println(s + " v " + e.speed());
        }
    }
}
