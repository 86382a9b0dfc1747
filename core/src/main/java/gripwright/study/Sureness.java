package gripwright.study;

import gripwright.closing.ClosingRunner;
import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.study.Uncertain.Member;
import java.util.ArrayList;
import java.util.List;

/**
 * How sure the answer of one closing is.
 *
 * @param held share of an ensemble over the stated uncertainties, at the same place
 * @param clear true if all runs of the ensemble agree
 * @param flips single inputs that turn the answer, empty if it is clear
 */
public record Sureness(Proportion held, boolean clear, List<Flip> flips) {
    /**
     * A single input that turns held into not held, or the other way round.
     *
     * @param input as in {@link SampledInput}
     * @param change such as "one deviation less"
     * @param outcome with it
     */
    public record Flip(String input, String change, Outcome outcome) {}

    public Sureness {
        flips = List.copyOf(flips);
    }

    /** What keeps the random numbers of one place apart from those of others, whoever asks. */
    public static String subject(String object, String grip, Conditions c) {
        return object + " with " + grip + " at " + c.x() + ", " + c.y() + ", " + c.turn();
    }

    /**
     * Closes an ensemble and, where it does not agree, looks for single inputs that turn the nominal answer.
     *
     * @param subject keeps the random numbers apart: object and grip
     */
    public static Sureness of(ClosingRunner runner, Conditions nominal, String subject, Uncertain uncertain) {
        List<Member> members = uncertain.run(runner, nominal, subject, 0);
        int held = (int) members.stream().filter(Member::held).count();
        int decided = (int) members.stream().filter(m -> m.outcome().decided()).count();
        boolean clear = Uncertain.agree(members);
        List<Flip> flips = new ArrayList<>();
        if (!clear) {
            for (int sign = -1; sign <= 1; sign += 2) {
                String change = sign < 0 ? "one deviation less" : "one deviation more";
                for (SampledInput input : SampledInput.values()) {
                    Conditions moved = moved(nominal, input, sign, uncertain.variation());
                    Outcome outcome = moved.equals(nominal)
                            ? Outcome.UNDECIDED
                            : runner.run(moved).outcome();
                    boolean before = members.get(0).held();
                    if (outcome.decided()
                            && members.get(0).outcome().decided()
                            && (outcome == Outcome.HELD) != before) {
                        flips.add(new Flip(input.words(), change, outcome));
                    }
                }
            }
        }
        return new Sureness(Proportion.of(held, decided, members.size() - decided), clear, flips);
    }

    private static Conditions moved(Conditions c, SampledInput input, int sign, Variation v) {
        return new Conditions(
                c.x(),
                c.y(),
                c.turn(),
                c.height(),
                c.padFriction() + (input == SampledInput.PAD_FRICTION ? sign : 0),
                c.tableFriction() + (input == SampledInput.TABLE_FRICTION ? sign : 0),
                c.mass() + (input == SampledInput.MASS ? sign : 0),
                c.padStiffness() * (input == SampledInput.PAD_STIFFNESS ? Variation.factor(v.padStiffness(), sign) : 1),
                c.springRate() * (input == SampledInput.SPRING_RATE ? Variation.factor(v.springRate(), sign) : 1));
    }
}
