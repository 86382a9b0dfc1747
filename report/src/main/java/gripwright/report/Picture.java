package gripwright.report;

/**
 * A finished drawing in SVG; one unit is meant to be about one CSS pixel.
 *
 * @param title what it shows, in a sentence, unescaped
 * @param width and
 * @param height in units
 * @param body elements inside the svg element
 */
public record Picture(String title, double width, double height, String body) {
    /** A whole SVG file with its styles, on light paper. */
    public String standAlone() {
        double margin = 16;
        String size = Num.coord(width + 2 * margin) + " " + Num.coord(height + 2 * margin);
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"fig\" viewBox=\""
                + Num.coord(-margin) + " " + Num.coord(-margin) + " " + size + "\" width=\""
                + Num.coord(width + 2 * margin) + "\" height=\"" + Num.coord(height + 2 * margin)
                + "\" role=\"img\">\n<title>" + Num.escape(title) + "</title>\n<style>"
                + Num.escape(Look.pictureStyleForFile())
                + "</style>\n" + Look.definitions() + "\n<rect class=\"bg\" x=\"" + Num.coord(-margin) + "\" y=\""
                + Num.coord(-margin) + "\" width=\"" + Num.coord(width + 2 * margin) + "\" height=\""
                + Num.coord(height + 2 * margin) + "\"/>\n" + body + "\n</svg>\n";
    }

    /** The svg element for a page that carries the styles and {@link Look#definitions}. */
    String inPage() {
        return "<svg class=\"fig\" viewBox=\"0 0 " + Num.coord(width) + " " + Num.coord(height)
                + "\" style=\"max-width:" + Num.coord(width) + "px\" role=\"img\" aria-label=\"" + Num.escape(title)
                + "\">" + body + "</svg>";
    }
}
