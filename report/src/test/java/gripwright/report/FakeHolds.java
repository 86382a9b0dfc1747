package gripwright.report;

import gripwright.closing.ClosingDetail;
import gripwright.closing.Endurance;
import gripwright.closing.GraspStiffness;
import gripwright.closing.HoldDetail;
import gripwright.closing.HoldPlan;
import gripwright.closing.Kept;
import gripwright.closing.LoadResult;
import gripwright.closing.Outcome;
import gripwright.closing.PullResult;
import gripwright.closing.Release;
import gripwright.contact.WrenchSpace;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Made-up tests of holds. */
final class FakeHolds {
    private FakeHolds() {}

    /** Pulls that slip, yield, hold all and stay undecided, and everything else once. */
    static HoldDetail hold(ClosingDetail closing, HoldPlan plan) {
        if (closing.summary().outcome() != Outcome.HELD) {
            return HoldDetail.notHeld(closing, plan);
        }
        List<PullResult> pulls = new ArrayList<>();
        List<PullResult> turns = new ArrayList<>();
        List<LoadResult> loads = new ArrayList<>();
        List<Endurance> endurance = new ArrayList<>();
        int i = 0;
        for (Vec3 a : List.of(Vec3.X, Vec3.Y, Vec3.Z)) {
            for (int sign = 1; sign >= -1; sign -= 2) {
                Vec3 axis = a.times(sign);
                PullResult.Kind kind = PullResult.Kind.values()[i % 4];
                pulls.add(pull(axis, false, 4 + 3 * i, 0.003, kind));
                turns.add(pull(axis, true, 0.2 + 0.1 * i, 0.05, kind));
                loads.add(new LoadResult(axis, Kept.values()[i % 3], 0.002, 0.01, 0.0001));
                endurance.add(new Endurance(axis, 20 + i, i == 5 ? Double.POSITIVE_INFINITY : 21 + i, i == 4));
                i++;
            }
        }
        return new HoldDetail(
                closing,
                plan,
                pulls,
                turns,
                loads,
                loads,
                Optional.of(new LoadResult(Vec3.Z, Kept.KEPT, 0.001, 0.01, 0.001)),
                endurance,
                Optional.of(new GraspStiffness(java.util.Collections.nCopies(36, 100.0), Vec3.Z, 900, Vec3.X, 3, true)),
                Optional.of(new WrenchSpace.Quality(0.05, 0.31, 0.29, 8, true, 40, 6)),
                Optional.of(new Release(
                        Release.How.LET_GO,
                        List.of(new Release.FingerLeft("left", 0.0001, 0, 0)),
                        0,
                        0.0002,
                        0.8,
                        "")));
    }

    private static PullResult pull(Vec3 axis, boolean turning, double peak, double at, PullResult.Kind kind) {
        boolean known = kind != PullResult.Kind.UNDECIDED;
        return new PullResult(
                axis,
                turning,
                peak,
                at,
                0.9 * at,
                2 * at,
                Double.NaN,
                kind,
                known ? List.of("left 1") : List.of(),
                known ? 0.5 * peak : Double.NaN,
                List.of(
                        new PullResult.Sample(0, 0),
                        new PullResult.Sample(at, peak),
                        new PullResult.Sample(2 * at, 0.9 * peak)),
                known ? "" : "no step short enough");
    }
}
