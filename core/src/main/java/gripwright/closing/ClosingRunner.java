package gripwright.closing;

/** Runs closings of one hand, grip and object; one instance per thread. */
public interface ClosingRunner {
    /** One whole run; the result depends on the conditions only, not on earlier runs. */
    ClosingSummary run(Conditions conditions);

    /** One whole run with everything that can be known about it. */
    ClosingDetail detail(Conditions conditions);
}
