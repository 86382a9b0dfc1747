package gripwright.model;

import java.util.List;

/**
 * Everything a project folder says.
 *
 * @param assumptions every default used and every estimate made while reading, in the order of the files
 */
public record Project(Hand hand, Need need, List<Assumption> assumptions) {
    /**
     * Something the files do not say.
     *
     * @param where file and key, such as "hand.yaml: fingers.left.joints[0].sideways"
     * @param text what was assumed, with its value, unit and source
     */
    public record Assumption(String where, String text) {}

    public Project {
        assumptions = List.copyOf(assumptions);
    }
}
