package gripwright.cli;

import gripwright.report.CalibrationPage;
import gripwright.report.FigureText;
import gripwright.signal.Calibration;
import gripwright.signal.Figure;
import gripwright.signal.FigureKind;
import gripwright.signal.Taxel;
import gripwright.units.QuantityText;
import java.util.ArrayList;
import java.util.List;

/** A calibration in words. */
final class CalibrationText {
    private static final List<FigureKind> SHOWN = List.of(
            FigureKind.SENSITIVITY,
            FigureKind.NONLINEARITY,
            FigureKind.HYSTERESIS,
            FigureKind.REPEATABILITY,
            FigureKind.CREEP,
            FigureKind.NOISE,
            FigureKind.DETECTION);

    private CalibrationText() {}

    static String of(Calibration c, String log, List<String> remarks) {
        StringBuilder out = new StringBuilder();
        String cycles = Say.count(c.cycles(), "cycle", "cycles") + " counted"
                + (c.cycles() > 0 ? " of " + QuantityText.number(c.cycleTime(), 3) + " s" : "") + " after "
                + c.practice()
                + " for practice";
        out.append(Words.wrapped("log      " + log + ": " + c.rows() + " rows every "
                        + QuantityText.number(1e3 * c.step(), 3) + " ms, " + Say.count(c.gaps(), "gap", "gaps") + "; "
                        + (c.plate() ? "a plate on all taxels" : "a probe on one taxel at a time") + ", up to "
                        + Say.force(c.top()) + "; " + cycles))
                .append('\n');
        for (String remark : remarks) {
            out.append("         " + Words.wrapped(remark)).append('\n');
        }
        for (String note : c.notes()) {
            out.append("         " + Words.wrapped(note)).append('\n');
        }
        out.append(Words.wrapped("clocks   " + FigureText.lag(c) + "; " + FigureText.skew(c)))
                .append("\n\n");
        out.append(table(c)).append("\n\n");
        for (Taxel t : c.taxels()) {
            if (!t.words().isEmpty()) {
                out.append(Words.wrapped(verdict(t))).append('\n');
            }
        }
        CalibrationPage.reasons(c)
                .forEach((reason, taxels) -> out.append(Words.wrapped("Not known from this log: " + reason
                                + (taxels.size() == c.in(Taxel.State.FITTED).size()
                                        ? "."
                                        : " (" + String.join(", ", taxels) + ").")))
                        .append('\n'));
        c.crossTalkRefusal()
                .ifPresent(why -> out.append(Words.wrapped("Not known from this log: cross-talk: " + why + "."))
                        .append('\n'));
        out.append('\n').append(definitions(c));
        return out.toString();
    }

    private static String verdict(Taxel t) {
        String name = t.column() + " of " + t.pad();
        if (t.state() != Taxel.State.FITTED) {
            return "Not fitted: " + name + ", " + t.state().words() + ": " + t.words() + ".";
        }
        return (t.recast() ? "Recast: " : "Mind: ") + name + " " + t.words() + ".";
    }

    private static Table table(Calibration c) {
        List<String> heads = new ArrayList<>(List.of("taxel"));
        SHOWN.forEach(k -> heads.add(head(k, c.unit())));
        Table table = new Table("l" + "r".repeat(SHOWN.size()), heads.toArray(String[]::new));
        for (Taxel t : c.taxels()) {
            List<String> row = new ArrayList<>(List.of(t.column()));
            for (FigureKind kind : SHOWN) {
                Figure f = t.figures().get(kind);
                row.add(f == null ? (kind == FigureKind.SENSITIVITY ? t.state().words() : "") : FigureText.of(f));
            }
            table.row(row.toArray(String[]::new));
        }
        return table;
    }

    private static String head(FigureKind kind, String unit) {
        return kind.words() + ", "
                + FigureText.unit(kind, unit).replace(" of full scale", "").replace(" of the step", "");
    }

    private static String definitions(Calibration c) {
        StringBuilder out =
                new StringBuilder("Values with half their 95 % intervals; percentages of full-scale output.\n");
        for (FigureKind kind : SHOWN) {
            out.append(Words.wrapped("- " + kind.words() + ": " + kind.definition()))
                    .append('\n');
        }
        return out.append(Words.wrapped(
                        "- rates: false alarms " + Say.exactly(c.rates().falseAlarm()) + ", misses "
                                + Say.exactly(c.rates().miss()) + ", zero from "
                                + c.rates().zeros()
                                + " readings; the other figures stand on the page"))
                .toString();
    }
}
