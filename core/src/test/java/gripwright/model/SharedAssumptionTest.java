package gripwright.model;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.model.Project.Assumption;
import java.util.List;
import org.junit.jupiter.api.Test;

class SharedAssumptionTest {
    @Test
    void oneStatementAtSeveralPlacesIsSaidOnceAndKeepsThemAll() {
        List<SharedAssumption> shared = SharedAssumption.of(List.of(
                new Assumption("need.yaml: objects.mug.stands", "taken as upright"),
                new Assumption("need.yaml: objects.mug.turned", "taken as 0 deg"),
                new Assumption("need.yaml: objects.D cell.stands", "taken as upright"),
                new Assumption("hand.yaml: fingers.left.joints[0].stands", "taken as upright"),
                new Assumption("need.yaml: objects.bracket.stands", "taken as lying")));
        assertThat(shared.stream().map(SharedAssumption::where))
                .containsExactly(
                        "need.yaml: stands of objects.mug, objects.D cell",
                        "need.yaml: objects.mug.turned",
                        "hand.yaml: fingers.left.joints[0].stands",
                        "need.yaml: objects.bracket.stands");
        assertThat(shared.stream().mapToInt(s -> s.places().size()).sum()).isEqualTo(5);
    }

    @Test
    void aKeyAtTheTopOfItsFileHasNoPlaceBeforeIt() {
        assertThat(SharedAssumption.of(List.of(new Assumption("need.yaml: wanted", "90 %")))
                        .get(0)
                        .where())
                .isEqualTo("need.yaml: wanted");
    }
}
