package gripwright.closing;

/**
 * The numbers of one run that studies need; small, because maps make thousands.
 *
 * @param outcome how it ended
 * @param travel distance of the object's centre of mass from its start at the end of the closing [m]
 * @param travelX along x [m] and
 * @param travelY along y [m] of the same
 * @param tilt angle between the object's upright axis at the start and at the end of the run [rad]; rolling of round
 *     things does not count
 * @param sink of the object against the hand during the lift [m]; 0 if not lifted
 * @param landingForce greatest force while the hand came in [N]
 * @param peakForce greatest force of any one phalanx or the palm on the object [N]
 * @param peakPressure greatest pad pressure [Pa]
 * @param links bodies (phalanges, palm) that press on the object at the end
 * @param objectResidual force out of balance on the object [N], damping left out, when the run last came to rest
 *     (arrived, closed or lifted); NaN if it never did
 * @param jointResidual greatest moment out of balance at a joint [N m], in the same state
 * @param steps accepted steps
 * @param iterations Newton iterations, rejected steps included
 */
public record ClosingSummary(
        Outcome outcome,
        double travel,
        double travelX,
        double travelY,
        double tilt,
        double sink,
        double landingForce,
        double peakForce,
        double peakPressure,
        int links,
        double objectResidual,
        double jointResidual,
        int steps,
        int iterations) {
    public boolean held() {
        return outcome == Outcome.HELD;
    }
}
