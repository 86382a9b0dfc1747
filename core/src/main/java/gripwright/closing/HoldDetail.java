package gripwright.closing;

import gripwright.contact.WrenchSpace;
import java.util.List;
import java.util.Optional;

/**
 * How hard a hand holds: a closing and what tests of its held state found. All axes are those of the world; nothing but
 * the closing is there unless it ended held.
 *
 * @param pulls along +x, -x, +y, -y, +z, -z
 * @param turns about the same, right-handed
 * @param gravity the weight turned towards each of fourteen directions (faces and corners of a cube)
 * @param pulses half-sine accelerations of the hand of the need's size along the six directions; empty without a need
 * @param steadyTurn the hand carried round a circle at that acceleration; empty without a need
 * @param endurance greatest acceleration along the six directions
 * @param wrenches what the final contacts could do if they could choose their forces; for ranking only
 * @param presses tasks of the object for this grip, each by a finger that the grip leaves free
 */
public record HoldDetail(
        ClosingDetail closing,
        HoldPlan plan,
        List<PullResult> pulls,
        List<PullResult> turns,
        List<LoadResult> gravity,
        List<LoadResult> pulses,
        Optional<LoadResult> steadyTurn,
        List<Endurance> endurance,
        Optional<GraspStiffness> stiffness,
        Optional<WrenchSpace.Quality> wrenches,
        Optional<Release> release,
        List<PressResult> presses) {
    public HoldDetail {
        pulls = List.copyOf(pulls);
        turns = List.copyOf(turns);
        gravity = List.copyOf(gravity);
        pulses = List.copyOf(pulses);
        endurance = List.copyOf(endurance);
        presses = List.copyOf(presses);
    }

    /** Without tasks of a free finger. */
    public HoldDetail(
            ClosingDetail closing,
            HoldPlan plan,
            List<PullResult> pulls,
            List<PullResult> turns,
            List<LoadResult> gravity,
            List<LoadResult> pulses,
            Optional<LoadResult> steadyTurn,
            List<Endurance> endurance,
            Optional<GraspStiffness> stiffness,
            Optional<WrenchSpace.Quality> wrenches,
            Optional<Release> release) {
        this(
                closing,
                plan,
                pulls,
                turns,
                gravity,
                pulses,
                steadyTurn,
                endurance,
                stiffness,
                wrenches,
                release,
                List.of());
    }

    /** The same with the tasks of a free finger. */
    public HoldDetail with(List<PressResult> tasks) {
        return new HoldDetail(
                closing,
                plan,
                pulls,
                turns,
                gravity,
                pulses,
                steadyTurn,
                endurance,
                stiffness,
                wrenches,
                release,
                tasks);
    }

    /** There was nothing to test. */
    public static HoldDetail notHeld(ClosingDetail closing, HoldPlan plan) {
        return new HoldDetail(
                closing,
                plan,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** True if the closing ended held, so that there was something to test. */
    public boolean tested() {
        return closing.summary().outcome() == Outcome.HELD;
    }

    /** Tests that did not converge. */
    public int undecided() {
        long count = pulls.stream()
                        .filter(p -> p.kind() == PullResult.Kind.UNDECIDED)
                        .count()
                + turns.stream()
                        .filter(p -> p.kind() == PullResult.Kind.UNDECIDED)
                        .count()
                + gravity.stream().filter(l -> l.kept() == Kept.UNDECIDED).count()
                + pulses.stream().filter(l -> l.kept() == Kept.UNDECIDED).count()
                + steadyTurn.stream().filter(l -> l.kept() == Kept.UNDECIDED).count()
                + endurance.stream().filter(Endurance::undecided).count()
                + presses.stream()
                        .filter(p -> p.verdict() == PressResult.Verdict.UNDECIDED)
                        .count()
                + release.stream().filter(r -> r.how() == Release.How.UNDECIDED).count();
        return (int) count;
    }
}
