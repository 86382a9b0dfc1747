package gripwright.model;

import gripwright.check.Check;
import java.util.List;

/**
 * A floating differential (bar or pulley): each branch gets ratio times the tension pulled at its input, whatever the
 * branches' travels; the input travels by the sum of ratio times branch travel. A locked motor does not lock it.
 */
public record Floating(List<Branch> branches) implements Transmission {
    public Floating {
        branches = List.copyOf(branches);
        Check.that(!branches.isEmpty(), "a floating differential needs at least one branch");
    }

    @Override
    public List<String> fingers() {
        return branches.stream().flatMap(b -> b.to().fingers().stream()).toList();
    }
}
