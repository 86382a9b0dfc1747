package gripwright.model;

import gripwright.check.Check;
import java.util.List;

/** How one pull is shared out: a tree whose leaves are the tendons of single fingers. */
public sealed interface Transmission permits FingerTendon, Floating, Spool {
    /** Names of the fingers pulled, left to right in the tree. */
    List<String> fingers();

    /** One branch of a tree: the share of the pull (or of the travel) and what it pulls. */
    record Branch(double ratio, Transmission to) {
        public Branch {
            Check.positive(ratio, "branch ratio", "");
        }
    }
}
