package gripwright.report;

/** A page of its own in the look of the report: screen in light and dark, paper in black and white. */
final class PageFrame {
    private final Html page = new Html();

    /** @param style added to the style sheet of the report */
    PageFrame(String title, String style) {
        page.raw("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/>"
                + "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"/>"
                + "<meta name=\"color-scheme\" content=\"light dark\"/>\n");
        page.element("title", "", title);
        page.raw("\n<style>\n" + HtmlReport.style() + style + "</style></head>\n<body>");
        page.raw("<svg width=\"0\" height=\"0\" class=\"defs\" aria-hidden=\"true\">" + Look.definitions() + "</svg>");
        page.raw("<main><div class=\"sheet\">");
    }

    /** Where the content goes. */
    Html page() {
        return page;
    }

    /** Begins a section; ended by {@link #end}. */
    Html section(String title) {
        return page.raw("\n<section><h2 class=\"plain\">").text(title).raw("</h2>");
    }

    void end() {
        page.raw("</section>");
    }

    String done() {
        return page.raw("</div></main></body></html>\n").done();
    }
}
