package gripwright.report;

import gripwright.closing.Outcome;
import java.util.ArrayList;
import java.util.List;

/** The look of the report for other pages that show its pictures: styles, hatches, marks. */
public final class PageLook {
    private PageLook() {}

    /** Style sheet of page and pictures in the colours of light and dark ground. */
    public static String styleSheet() {
        return HtmlReport.style();
    }

    /** Content of an svg element that stands once in the page: hatches and marks, referred to by id. */
    public static String definitions() {
        return Look.definitions();
    }

    /** A picture as an svg element for a page with {@link #styleSheet} and {@link #definitions}; no inline styles. */
    public static String svg(Picture picture) {
        return "<svg class=\"fig\" viewBox=\"0 0 " + Num.coord(picture.width()) + " " + Num.coord(picture.height())
                + "\" role=\"img\" aria-label=\"" + Num.escape(picture.title()) + "\">" + picture.body() + "</svg>";
    }

    /** Short name of an outcome in ids and style classes: mark {@code mk-KEY}, ground {@code g-KEY}. */
    public static String key(Outcome outcome) {
        return Marks.key(outcome);
    }

    /** Outcomes in the order of legends. */
    public static List<Outcome> order() {
        return new ArrayList<>(Marks.ORDER);
    }
}
