package gripwright.model;

import gripwright.check.Check;
import java.util.List;

/**
 * A common spool: each branch travels by ratio times the input's travel, whatever its tension (a slack branch stays
 * slack); the input feels the sum of ratio times branch tension.
 */
public record Spool(List<Branch> branches) implements Transmission {
    public Spool {
        branches = List.copyOf(branches);
        Check.that(!branches.isEmpty(), "a spool needs at least one branch");
    }

    @Override
    public List<String> fingers() {
        return branches.stream().flatMap(b -> b.to().fingers().stream()).toList();
    }
}
