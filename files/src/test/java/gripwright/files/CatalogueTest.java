package gripwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gripwright.files.CatalogueEntry.Mark;
import gripwright.shape.Cylinder;
import java.util.List;
import org.junit.jupiter.api.Test;

class CatalogueTest {
    private static double density(CatalogueEntry entry) {
        return entry.mass() / entry.shape().volume();
    }

    private static List<CatalogueEntry> named(String part) {
        List<CatalogueEntry> found = Catalogue.entries().stream()
                .filter(e -> e.name().contains(part))
                .toList();
        assertThat(found).as(part).isNotEmpty();
        return found;
    }

    @Test
    void everyEntryHasASizeAMassASourceAndItsOwnName() {
        assertThat(Catalogue.entries()).hasSize(45 + 9);
        assertThat(Catalogue.entries().stream().map(CatalogueEntry::name)).doesNotHaveDuplicates();
        for (CatalogueEntry entry : Catalogue.entries()) {
            assertThat(entry.mass()).as(entry.name()).isBetween(1e-3, 1.0);
            assertThat(entry.shape().boundingRadius()).as(entry.name()).isBetween(5e-3, 0.2);
            assertThat(entry.source()).as(entry.name()).isNotBlank();
            assertThat(Catalogue.find(entry.name())).isEqualTo(entry);
        }
    }

    @Test
    void referenceCoinsHaveTheDensityOfCoinMetals() {
        // Copper-nickel, brass, steel and zinc: 5500 to 9000 kg/m3 with the rim counted as full; common practice.
        for (String kind : List.of("US cent", "US nickel", "US dime", "US quarter", "US 50", "US 100", "euro coin")) {
            for (CatalogueEntry coin : named(kind)) {
                assertThat(density(coin)).as(coin.name()).isBetween(5500.0, 9000.0);
            }
        }
    }

    @Test
    void referenceComputedSolidsHaveTheDensityTheyWereComputedFrom() {
        for (CatalogueEntry steel : named("steel sphere")) {
            assertThat(density(steel)).isCloseTo(7850, within(0.1));
        }
        // The rounded edges take 2e-4 of the volume away.
        assertThat(density(Catalogue.find("aluminium cylinder 50 x 100"))).isCloseTo(2700, within(1.0));
        assertThat(density(Catalogue.find("PVC rod 60.32 x 100"))).isCloseTo(1400, within(1.0));
    }

    @Test
    void solidThingsHavePhysicalDensities() {
        assertThat(density(Catalogue.find("golf ball"))).isBetween(1000.0, 1300.0);
        assertThat(density(Catalogue.find("pool ball"))).isBetween(1500.0, 1800.0);
        assertThat(density(Catalogue.find("cell R20 / D"))).isBetween(2000.0, 3500.0);
        assertThat(density(Catalogue.find("cell R6 / AA"))).isBetween(2000.0, 3500.0);
        assertThat(density(Catalogue.find("hen egg class M"))).isBetween(950.0, 1150.0);
        assertThat(density(Catalogue.find("die 16 mm"))).isBetween(1000.0, 1500.0);
        assertThat(density(Catalogue.find("table tennis ball"))).isBetween(60.0, 100.0);
        assertThat(density(Catalogue.find("beverage can 330 ml full"))).isBetween(800.0, 1000.0);
        assertThat(density(Catalogue.find("A4 sheet 80 g/m2"))).isBetween(700.0, 900.0);
    }

    @Test
    void referencePipeMassIsThatOfAHollowCylinder() {
        CatalogueEntry pipe = Catalogue.find("PVC pipe 2 inch");
        assertThat(((Cylinder) pipe.shape()).radius()).isCloseTo(0.03016, within(1e-9));
        double bore = 0.06032 - 2 * 0.00391;
        double expected = Math.PI / 4 * (0.06032 * 0.06032 - bore * bore) * 0.1 * 1400;
        assertThat(pipe.mass()).isCloseTo(expected, within(1e-12));
        assertThat(pipe.massMark()).isEqualTo(Mark.COMPUTED);
        assertThat(pipe.mark()).isEqualTo("size seen, mass computed");
        assertThat(pipe.assumption()).contains("100 mm long").contains("1400 kg/m3");
    }

    @Test
    void marksOfSizeAndMassAreKeptApart() {
        assertThat(Catalogue.find("cell R20 / D").mark()).isEqualTo("size seen, mass memory/typical");
        assertThat(Catalogue.find("US cent").mark()).isEqualTo("seen");
        assertThat(Catalogue.find("PET bottle 500 ml full").mark()).isEqualTo("memory/typical");
    }

    @Test
    void namesForgiveCapitalsBlanksAndTheRemarkInBrackets() {
        assertThat(Catalogue.find("  Golf  BALL ").name()).isEqualTo("golf ball (min diameter; max mass)");
        assertThatThrownBy(() -> Catalogue.find("tennis ball type 2"))
                .hasMessage("the catalogue has 2 objects 'tennis ball type 2': give one of"
                        + " 'tennis ball type 2 (low)', 'tennis ball type 2 (high)'");
    }

    @Test
    void anUnknownNameIsAnsweredWithTheNearest() {
        assertThatThrownBy(() -> Catalogue.find("squosh ball"))
                .hasMessageContaining(
                        "the catalogue has no object 'squosh ball'; the nearest names are 'squash ball (");
        assertThatThrownBy(() -> Catalogue.find("cell D")).hasMessageContaining("'cell R20 / D'");
    }
}
