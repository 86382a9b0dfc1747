package gripwright.study;

import gripwright.model.Hand;
import java.util.function.UnaryOperator;

/**
 * One change of a hand.
 *
 * @param quantity what is changed, such as "proximal phalanx length"
 * @param change by how much and which way, such as "20 % more"
 * @param kind whether it is a choice of the designer or something that goes wrong
 * @param applied gives the changed hand; throws IllegalArgumentException if there is no such hand
 */
public record DesignChange(String quantity, String change, Kind kind, UnaryOperator<Hand> applied) {
    /** Why one looks at it. */
    public enum Kind {
        DESIGN("design"),
        FAULT("fault");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Both together. */
    public String words() {
        return quantity + " " + change;
    }
}
