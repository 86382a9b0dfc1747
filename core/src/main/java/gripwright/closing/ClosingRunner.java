package gripwright.closing;

/** Runs closings of one hand, grip and object; one instance per thread. */
public interface ClosingRunner {
    /**
     * One whole run; the result depends on the conditions only, not on earlier runs.
     *
     * @throws java.util.concurrent.CancellationException by runners that notice that their thread was interrupted; they
     *     can be used again
     */
    ClosingSummary run(Conditions conditions);

    /** One whole run with everything that can be known about it; called off like {@link #run}. */
    ClosingDetail detail(Conditions conditions);

    /**
     * One run and, if it ends held, the tests of the hold.
     *
     * @throws UnsupportedOperationException by runners that only close
     */
    default HoldDetail hold(Conditions conditions, HoldPlan plan) {
        throw new UnsupportedOperationException(getClass().getName() + " does not test holds");
    }

    /**
     * One run with what its chips said.
     *
     * @throws UnsupportedOperationException by runners without chips
     */
    default SensedDetail sensed(Conditions conditions) {
        throw new UnsupportedOperationException(getClass().getName() + " has no chips");
    }
}
