package gripwright.signal;

import java.util.Optional;

/** What a log lacks for a figure, with what to record; empty if it is there. */
record Needs(
        Optional<String> temperature,
        Optional<String> ambient,
        Optional<String> creep,
        Optional<String> cycles,
        Optional<String> rest) {
    private static final double REST_PER_TIME = 5;

    /** Once the creep time is known: whether the rest before the hold was five times as long. */
    Needs after(TaxelFit.Fitted fit, double restBeforeHold) {
        double wanted = REST_PER_TIME * fit.creepTime();
        return creep.isPresent() || !fit.creepTimeKnown() || restBeforeHold >= wanted
                ? this
                : new Needs(
                        temperature,
                        ambient,
                        Optional.of("the rest of " + Words.number(restBeforeHold)
                                + " s before the hold is shorter than five creep times; rest for at least "
                                + Words.number(wanted) + " s"),
                        cycles,
                        rest);
    }
}
