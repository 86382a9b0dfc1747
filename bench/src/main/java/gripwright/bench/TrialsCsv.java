package gripwright.bench;

import gripwright.closing.Outcome;
import gripwright.report.PageLook;
import gripwright.study.Proportion;
import gripwright.study.TrialsResult;
import java.util.ArrayList;
import java.util.List;

/** The table of trials as comma-separated values after RFC 4180, one line per object and grip. */
final class TrialsCsv {
    private TrialsCsv() {}

    static String of(TrialsResult trials) {
        List<Outcome> failures =
                PageLook.order().stream().filter(o -> o != Outcome.HELD).toList();
        StringBuilder out = new StringBuilder();
        List<String> head = new ArrayList<>(List.of(
                "object", "grip", "chosen", "held", "decided", "share", "share_low_95", "share_high_95", "seed"));
        failures.forEach(o -> head.add(o.words().replace(' ', '_')));
        line(out, head);
        for (TrialsResult.Pair pair : trials.pairs()) {
            Proportion p = pair.success();
            boolean chosen = trials.best().stream()
                    .anyMatch(b -> b.object().equals(pair.object()) && b.grip().equals(pair.grip()));
            List<String> row = new ArrayList<>(List.of(
                    pair.object(),
                    pair.grip(),
                    chosen ? "yes" : "no",
                    Integer.toString(p.successes()),
                    Integer.toString(p.trials()),
                    number(p.share()),
                    number(p.low()),
                    number(p.high()),
                    Long.toString(trials.seed())));
            failures.forEach(o -> row.add(Integer.toString(pair.outcomes().getOrDefault(o, 0))));
            line(out, row);
        }
        return out.toString();
    }

    private static String number(double value) {
        return Double.isFinite(value) ? Wire.number(value, 6).json() : "";
    }

    private static void line(StringBuilder out, List<String> fields) {
        for (int i = 0; i < fields.size(); i++) {
            String field = fields.get(i);
            boolean quoted = field.chars().anyMatch(c -> c == '"' || c == ',' || c == '\n' || c == '\r');
            out.append(i == 0 ? "" : ",").append(quoted ? '"' + field.replace("\"", "\"\"") + '"' : field);
        }
        out.append("\r\n");
    }
}
