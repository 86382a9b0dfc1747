package gripwright.study;

import gripwright.closing.Outcome;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Why a trial on the bench ended as it did, in the words of the score sheet; each fits some outcomes only. */
public enum TrialReason {
    ON_THE_OBJECT("came down on the object", Outcome.LANDED_ON_IT),
    ON_THE_TABLE("came down on the table", Outcome.LANDED_ON_IT),
    DENTED("dented", Outcome.SQUEEZED),
    BROKE("broke", Outcome.SQUEEZED),
    CLOSED_BESIDE_IT("closed beside it", Outcome.MISSED),
    SPRANG_OUT("sprang out of the fingers", Outcome.THROWN_OUT),
    TIPPED_BY_FIRST_TOUCH("tipped by the first touch", Outcome.KNOCKED_OVER),
    ONE_SIDE_TOUCHED_FIRST("one side touched first", Outcome.PUSHED_AWAY, Outcome.KNOCKED_OVER),
    ROLLED_AWAY("rolled away", Outcome.PUSHED_AWAY),
    ONE_SIDE_PRESSED("only one side pressed", Outcome.DROPPED, Outcome.PUSHED_AWAY),
    SLIPPED_DOWN("slipped down", Outcome.DROPPED),
    TURNED_IN_THE_HAND("turned in the hand", Outcome.DROPPED),
    HAND_BROKE("tendon, joint or pad failed", Outcome.UNDECIDED),
    ROBOT_STOPPED("robot or camera stopped", Outcome.UNDECIDED),
    OPERATOR("mistake of the operator", Outcome.UNDECIDED),
    OTHER("other, see note", failures());

    private final String words;
    private final Set<Outcome> fits;

    TrialReason(String words, Outcome first, Outcome... more) {
        this(words, EnumSet.of(first, more));
    }

    TrialReason(String words, Set<Outcome> fits) {
        this.words = words;
        this.fits = Set.copyOf(fits);
    }

    private static Set<Outcome> failures() {
        return EnumSet.complementOf(EnumSet.of(Outcome.HELD));
    }

    /** The words on the sheet. */
    public String words() {
        return words;
    }

    public boolean fits(Outcome outcome) {
        return fits.contains(outcome);
    }

    /** The reasons that fit an outcome, in order; none for held. */
    public static List<TrialReason> of(Outcome outcome) {
        return Stream.of(values()).filter(r -> r.fits(outcome)).toList();
    }
}
