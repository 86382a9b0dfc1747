package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.model.Project.Assumption;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class AssumptionsTest {
    @Test
    void sameTextOfTheSameKeyBecomesOneLine() {
        List<Assumption> all = List.of(
                new Assumption("need.yaml: objects.a.turned", "taken as 0 deg"),
                new Assumption("need.yaml: objects.a.weight", "taken as 1"),
                new Assumption("need.yaml: objects.b.turned", "taken as 0 deg"),
                new Assumption("hand.yaml: bone friction", "taken as 0.2"),
                new Assumption("hand.yaml: grips.b.turned", "taken as 0 deg"));
        assertThat(Assumptions.grouped(all))
                .containsExactly(
                        new Assumption("need.yaml: turned of objects.a, objects.b", "taken as 0 deg"),
                        new Assumption("need.yaml: objects.a.weight", "taken as 1"),
                        new Assumption("hand.yaml: bone friction", "taken as 0.2"),
                        new Assumption("hand.yaml: grips.b.turned", "taken as 0 deg"));
    }

    @Test
    void longListsAreCut() {
        List<Assumption> all = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            all.add(new Assumption("need.yaml: objects.n" + i + ".turned", "taken as 0 deg"));
        }
        assertThat(Assumptions.grouped(all))
                .singleElement()
                .satisfies(a -> assertThat(a.where()).endsWith("objects.n5 and 4 more"));
    }
}
