package gripwright.model;

import java.util.OptionalDouble;

/** What a joint is made of. A new kind is a record that implements this, and one line in the project reader. */
public interface JointKind {
    /** Spring rate in flexion [N m/rad]. */
    double bendingRate();

    /** Rate against bending out of the finger's plane [N m/rad]; empty if taken as rigid. */
    OptionalDouble sidewaysRate();

    /** The formula and its source, in words, for the list of assumptions. */
    String origin();
}
