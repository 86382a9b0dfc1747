package gripwright.report;

import java.util.List;

/** Pieces of the page. Everything that comes from outside passes through {@link #text}. */
final class Html {
    private final StringBuilder out = new StringBuilder();

    /** Elements as they are. */
    Html raw(String elements) {
        out.append(elements);
        return this;
    }

    /** Text, escaped. */
    Html text(String text) {
        out.append(Num.escape(text));
        return this;
    }

    /** An element that holds only text. */
    Html element(String tag, String cls, String text) {
        out.append('<').append(tag);
        if (!cls.isEmpty()) {
            out.append(" class=\"").append(cls).append('"');
        }
        out.append('>');
        return text(text).raw("</" + tag + ">");
    }

    Html heading(String text) {
        return element("h3", "", text);
    }

    /** A sentence of the report in its telling voice. */
    Html say(String text) {
        return element("p", "say", text);
    }

    Html small(String text) {
        return element("p", "small", text);
    }

    Html figure(Picture picture) {
        return raw("<figure>" + picture.inPage() + "</figure>");
    }

    /**
     * A table of text.
     *
     * @param columns heads; one that starts with # is set flush right, for numbers
     * @param rows the first cell of each is its head
     */
    Html table(String caption, List<String> columns, List<List<String>> rows) {
        raw("<div class=\"scroll\">").raw(columns.size() <= 3 ? "<table class=\"narrow\">" : "<table>");
        if (!caption.isEmpty()) {
            element("caption", "", caption);
        }
        raw("<thead><tr>");
        for (String c : columns) {
            raw(number(c) ? "<th scope=\"col\" class=\"num\">" : "<th scope=\"col\">")
                    .text(number(c) ? c.substring(1) : c)
                    .raw("</th>");
        }
        raw("</tr></thead><tbody>");
        for (List<String> row : rows) {
            raw("<tr>");
            for (int i = 0; i < row.size(); i++) {
                String cls = number(columns.get(i)) ? " class=\"num\"" : "";
                raw(i == 0 ? "<th scope=\"row\"" + cls + ">" : "<td" + cls + ">");
                text(row.get(i)).raw(i == 0 ? "</th>" : "</td>");
            }
            raw("</tr>");
        }
        return raw("</tbody></table></div>");
    }

    private static boolean number(String column) {
        return column.startsWith("#");
    }

    String done() {
        return out.toString();
    }
}
