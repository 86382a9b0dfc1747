package gripwright.model;

import java.util.Map;
import java.util.Optional;

/**
 * Coulomb friction coefficients [-] of each rubber on each object surface.
 *
 * @param byRubber rubber name, then surface name
 * @param bone coefficient of bare bone (plastic, metal) on any object
 */
public record FrictionTable(Map<String, Map<String, Spread>> byRubber, Spread bone) {
    public FrictionTable {
        byRubber = Map.copyOf(byRubber);
    }

    public Optional<Spread> of(String rubber, String surface) {
        return Optional.ofNullable(byRubber.getOrDefault(rubber, Map.of()).get(surface));
    }
}
