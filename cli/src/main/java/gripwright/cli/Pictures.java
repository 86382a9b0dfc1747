package gripwright.cli;

import gripwright.closing.ChipReadings;
import gripwright.closing.ClosingDetail;
import gripwright.closing.HoldDetail;
import gripwright.model.GraspObject;
import gripwright.model.Hand;
import gripwright.model.Need;
import gripwright.report.ClosingPicture;
import gripwright.report.HandPicture;
import gripwright.report.HoldPicture;
import gripwright.report.MapPicture;
import gripwright.report.Picture;
import gripwright.report.PlanPicture;
import gripwright.report.RefinePicture;
import gripwright.report.ScorePicture;
import gripwright.report.SensedPicture;
import gripwright.report.StrengthPicture;
import gripwright.report.TrialsPicture;
import gripwright.report.VaryPicture;
import gripwright.study.GripStrength.Figures;
import gripwright.study.MapResult;
import gripwright.study.Refinement;
import gripwright.study.SheetScore;
import gripwright.study.TrialPlan;
import gripwright.study.TrialsResult;
import gripwright.study.VaryResult;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** SVG files of results. */
final class Pictures {
    private Pictures() {}

    static String hand(Hand hand) {
        return HandPicture.draw(hand).standAlone();
    }

    static String closing(Hand hand, GraspObject object, ClosingDetail detail, @Nullable ChipReadings readings) {
        Picture closing = ClosingPicture.draw(hand, object, detail);
        return (readings == null ? closing : SensedPicture.under(closing, readings)).standAlone();
    }

    static String hold(Hand hand, GraspObject object, HoldDetail detail) {
        return HoldPicture.draw(hand, object, detail).standAlone();
    }

    static String map(MapResult map, Hand hand, GraspObject object) {
        return MapPicture.draw(map, hand, object).standAlone();
    }

    static String refinements(String object, List<Refinement> refinements) {
        return RefinePicture.draw(object, refinements).standAlone();
    }

    static String vary(VaryResult vary) {
        return VaryPicture.draw(vary).standAlone();
    }

    static String strength(Figures figures) {
        return StrengthPicture.draw(figures).standAlone();
    }

    static String plan(TrialPlan plan, Need need) {
        return PlanPicture.draw(plan, need).standAlone();
    }

    static String score(SheetScore score, double wanted) {
        return ScorePicture.draw(score, wanted).standAlone();
    }

    static String trials(TrialsResult trials, Need need) {
        return TrialsPicture.table(trials, need).standAlone();
    }
}
