package gripwright.signal;

import gripwright.units.QuantityText;
import java.util.List;

/** Pieces of sentences. */
final class Words {
    private Words() {}

    static String number(double value) {
        return QuantityText.number(value, 3);
    }

    static String list(List<String> names) {
        return names.size() < 2
                ? String.join("", names)
                : String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.get(names.size() - 1);
    }
}
