package gripwright.files.json;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Criteria;
import gripwright.closing.Policies;
import gripwright.study.CellShare;
import gripwright.study.MapResult;
import gripwright.study.Proportion;
import java.util.Locale;
import java.util.OptionalLong;

/** A capture map. Schema: docs/schema/map.schema.json. */
public final class MapJson {
    private MapJson() {}

    /** Of a hand that pulls blind. */
    public static String of(Origin origin, Criteria criteria, MapResult map) {
        return of(origin, criteria, map, Policies.BLIND.word(), OptionalLong.empty());
    }

    /**
     * @param policy word of the drive policy
     * @param noiseSeed of the chips, if they were asked
     */
    public static String of(Origin origin, Criteria criteria, MapResult map, String policy, OptionalLong noiseSeed) {
        return JsonText.of(json -> {
            origin.write(json, "map");
            json.text("policy", policy);
            noiseSeed.ifPresent(seed -> json.whole("noise_seed", seed));
            json.text("object", map.object())
                    .text("grip", map.grip())
                    .truth("complete", !map.runs().contains(null))
                    .text(
                            "conventions",
                            "runs row by row: the first row is y = -span, the first column x = -span; null = not "
                                    + "computed, the map was stopped; SI units, at the end of each name");
            json.object("criteria", j -> RunJson.criteria(j, criteria));
            json.number("span_m", map.span())
                    .whole("cells", map.cells())
                    .number("capture_radius_m", map.captureRadius())
                    .number("share_radius_m", map.shareRadius())
                    .number("wanted_share", map.wantedShare())
                    .number("held_area_m2", map.heldArea());
            if (map.hasShares()) {
                json.number("held_area_low_m2", map.heldAreaInterval().low())
                        .number("held_area_high_m2", map.heldAreaInterval().high());
            }
            json.array("runs", () -> {
                for (int row = 0; row < map.cells(); row++) {
                    for (int column = 0; column < map.cells(); column++) {
                        run(json, map, row, column);
                    }
                }
            });
            origin.writeAssumptions(json);
        });
    }

    private static void run(JsonText json, MapResult map, int row, int column) {
        ClosingSummary run = map.runs().get(row * map.cells() + column);
        if (run == null) {
            json.none();
            return;
        }
        json.object(() -> {
            json.number("x_m", map.shift(column)).number("y_m", map.shift(row));
            RunJson.summary(json, run);
            CellShare share = map.hasShares() ? map.cell(row, column) : null;
            if (share != null) {
                Proportion p = share.proportion();
                json.text("basis", share.basis().name().toLowerCase(Locale.ROOT))
                        .whole("held_runs", share.held())
                        .whole("decided_runs", share.decided())
                        .whole("undecided_runs", share.undecided())
                        .whole("runs_here", share.here().runs())
                        .number("held_low", p.low())
                        .number("held_high", p.high())
                        .truth("model_limited", share.modelLimited());
            }
        });
    }
}
