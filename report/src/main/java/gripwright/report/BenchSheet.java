package gripwright.report;

import java.util.List;

/**
 * One bench measurement as a sheet to print: how, what to write down, the formula, and where the result goes.
 *
 * @param replaces which assumption it replaces
 * @param need what to have at hand
 * @param error how well the result is known
 * @param into lines for the project files
 * @param mind dangers and traps
 * @param columns of the table; rows may be shorter: what is missing is to be filled in
 */
record BenchSheet(
        String title,
        String replaces,
        List<String> need,
        List<String> steps,
        String formula,
        List<String> error,
        List<String> into,
        List<String> mind,
        List<String> columns,
        List<List<String>> rows) {
    static final String STYLE = """
            h2.plain{display:block}
            table.fill td,table.fill th{height:32px;vertical-align:middle;padding-top:4px;padding-bottom:4px}
            table.fill td.w{border-left:1px solid var(--rule);min-width:64px}
            table.fill td:nth-child(-n+3){padding-right:14px}
            .formula{font:600 18px/1.5 var(--serif);margin:4px 0 10px}
            @media print{thead{display:table-header-group}table.fill{font-size:14px}table.fill td,table.fill th{height:38px}
            table.fill tr{break-inside:avoid}}
            """;

    /** What comes after any of them. */
    static final String RERUN =
            "Note beside the value, behind a #, that it was measured, when, and on what. 'gripwright check' then"
                    + " says which results are stale.";

    void write(PageFrame frame) {
        Html page = frame.section(title);
        page.say(Num.sentence(replaces));
        list(page, "You need", "ul", need);
        list(page, "How", "ol", steps);
        page.heading("Formula").raw("<p class=\"formula\">").text(formula).raw("</p>");
        list(page, "How well it is known then", "ul", error);
        page.heading("Into the project").raw("<ul class=\"cautions\">");
        into.forEach(i -> page.element("li", "", i)); // to be typed or copied: no unbreakable blanks
        page.raw("</ul>");
        list(page, "Mind", "ul", mind);
        page.heading("Write down");
        page.raw("<div class=\"scroll\"><table class=\"fill\"><thead><tr>");
        columns.forEach(c -> page.element("th", "", c));
        page.raw("</tr></thead><tbody>");
        for (List<String> row : rows) {
            page.raw("<tr>");
            for (int i = 0; i < columns.size(); i++) {
                String cell = i < row.size() ? row.get(i) : "";
                page.element("td", cell.isEmpty() ? "w" : "", Num.sentence(cell));
            }
            page.raw("</tr>");
        }
        page.raw("</tbody></table></div>");
        frame.end();
    }

    private static void list(Html page, String title, String tag, List<String> items) {
        page.heading(title).raw("<" + tag + " class=\"cautions\">");
        items.forEach(i -> page.element("li", "", Num.sentence(i)));
        page.raw("</" + tag + ">");
    }
}
