package gripwright.signal;

import java.util.Optional;

/** What a log lacks for a figure, with what to record; empty if it is there. */
record Needs(
        Optional<String> temperature,
        Optional<String> ambient,
        Optional<String> creep,
        Optional<String> cycles,
        Optional<String> rest) {
    static final int LEAST_CYCLES = 3;

    private static final double LEAST_REST = 20;
    private static final double REST_PER_TIME = 5;

    /**
     * @param course of the loads that are known to press the taxels
     * @param all of all loads
     */
    static Needs of(String pad, LoadCourse course, LoadCourse all, Surroundings around) {
        Optional<String> creep = Optional.empty();
        if (course.hold().isEmpty()) {
            creep = Optional.of("no constant force over 20 s; hold full force for a minute after a rest of a minute");
        } else if (course.restBeforeHold() < LEAST_REST) {
            creep = Optional.of("only " + Words.number(course.restBeforeHold())
                    + " s of rest before the hold; rest for a minute before it");
        }
        Optional<String> cycles = course.cycles().size() >= LEAST_CYCLES
                ? Optional.empty()
                : Optional.of(course.cycles().size() + " slow cycles of about one length to full force after "
                        + course.practice().size()
                        + " for practice; record three for practice and at least five to count,"
                        + " rising and falling steadily over some seconds");
        Optional<String> rest = all.rest().length() * all.step() >= LEAST_REST
                ? Optional.empty()
                : Optional.of("no 20 s without load; let the pad rest for a minute");
        return new Needs(around.lacksTemperature(pad), around.noStep(), creep, cycles, rest);
    }

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
