package gripwright.study;

import gripwright.closing.ClosingRunner;
import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.math.Draws;
import gripwright.math.Streams;
import java.util.ArrayList;
import java.util.List;

/**
 * Small ensembles: the same closing again with friction, mass, pads and springs as uncertain as they are stated to be,
 * where one run means little.
 *
 * @param variation of the hand from copy to copy
 * @param streams that the members are drawn from
 */
public record Uncertain(Variation variation, Streams streams) {
    /** Members that must agree before an ensemble stops. */
    public static final int FIRST = 6;

    /** Members after which an ensemble stops that is far from agreeing: at least {@link #EACH} held, as many not. */
    public static final int ENOUGH = 10;

    private static final int EACH = 3;

    /** Members of any other ensemble. */
    public static final int MOST = 16;

    /** The rule, for printing beside a share. */
    public static final String RULE =
            "Ensembles: the nominal run and further ones with friction and mass drawn from their"
                    + " stated spreads, pads and springs from those assumed for trials; in a map also a place within the cell."
                    + " They stop when the first " + FIRST
                    + " runs agree (all held, all failed or all undecided), or from run " + ENOUGH
                    + " on once " + EACH + " are held and " + EACH + " are not, and have " + MOST
                    + " runs otherwise. Where half of all runs would hold, " + FIRST
                    + " agree by luck in 3 % of cases; where"
                    + " nine in ten would, in 53 %: a share of 0 or 100 % says no more than that.";

    /** From a seed. */
    public static Uncertain seeded(long seed) {
        return new Uncertain(Variation.DEFAULT, new Streams(seed, "ensemble"));
    }

    /** One run of an ensemble. */
    public record Member(Conditions conditions, Outcome outcome) {
        public boolean held() {
            return outcome == Outcome.HELD;
        }
    }

    /**
     * Conditions of a member; member 0 is the nominal itself.
     *
     * @param subject what is closed on where; the same words give the same members
     * @param half half width of the cell in which the place lies [m]; 0 = the place is exact
     */
    public Conditions member(Conditions nominal, String subject, int number, double half) {
        if (number == 0) {
            return nominal;
        }
        Draws draws = streams.draws(subject, number);
        return new Conditions(
                nominal.x() + half * (2 * draws.uniform(SampledInput.X.words()) - 1),
                nominal.y() + half * (2 * draws.uniform(SampledInput.Y.words()) - 1),
                nominal.turn(),
                nominal.height(),
                nominal.padFriction() + draws.normal(SampledInput.PAD_FRICTION.words()),
                nominal.tableFriction() + draws.normal(SampledInput.TABLE_FRICTION.words()),
                nominal.mass() + draws.normal(SampledInput.MASS.words()),
                nominal.padStiffness()
                        * Variation.factor(variation.padStiffness(), draws.normal(SampledInput.PAD_STIFFNESS.words())),
                nominal.springRate()
                        * Variation.factor(variation.springRate(), draws.normal(SampledInput.SPRING_RATE.words())));
    }

    /** The members of an ensemble, in order, by {@link #RULE}. */
    public List<Member> run(ClosingRunner runner, Conditions nominal, String subject, double half) {
        List<Member> members = new ArrayList<>();
        while (members.size() < wanted(members)) {
            Conditions c = member(nominal, subject, members.size(), half);
            members.add(new Member(c, runner.run(c).outcome()));
        }
        return members;
    }

    /** Runs that an ensemble should have, as far as the runs made so far tell. */
    static int wanted(List<Member> members) {
        if (alike(members)) {
            return FIRST;
        }
        long held = members.stream().filter(Member::held).count();
        return held >= EACH && members.size() - held >= EACH ? ENOUGH : MOST;
    }

    private static boolean alike(List<Member> members) {
        return agree(members) || members.stream().noneMatch(m -> m.outcome().decided());
    }

    /** True if all are held or none is, and none is undecided. */
    public static boolean agree(List<Member> members) {
        return members.stream().allMatch(m -> m.outcome().decided())
                && members.stream().map(Member::held).distinct().count() <= 1;
    }
}
