package gripwright.files;

import gripwright.units.Measure;
import gripwright.units.QuantityText;

/**
 * The values a quantity may have.
 *
 * @param least [SI]; -infinity if only the measure limits it
 * @param open whether {@code least} itself is excluded
 * @param greatest [SI]; infinity if only the measure limits it
 */
record Range(Measure measure, double least, boolean open, double greatest) {
    static Range any(Measure measure) {
        return new Range(measure, Double.NEGATIVE_INFINITY, false, Double.POSITIVE_INFINITY);
    }

    static Range above0(Measure measure) {
        return new Range(measure, 0, true, Double.POSITIVE_INFINITY);
    }

    static Range from0(Measure measure) {
        return new Range(measure, 0, false, Double.POSITIVE_INFINITY);
    }

    Range upTo(double most) {
        return new Range(measure, least, open, most);
    }

    static Range within(Measure measure, double least, double greatest) {
        return new Range(measure, least, false, greatest);
    }

    boolean holds(double value) {
        return (open ? value > least : value >= least) && value <= greatest;
    }

    /** "a length above 0", without an example. */
    String rule() {
        String above = least == Double.NEGATIVE_INFINITY
                ? ""
                : open ? " above " + shown(least) : greatest < Double.POSITIVE_INFINITY ? "" : " of 0 or more";
        String below = greatest == Double.POSITIVE_INFINITY
                ? ""
                : open ? " and at most " + shown(greatest) : " from " + shown(least) + " to " + shown(greatest);
        return measure.words() + above + below;
    }

    private String shown(double value) {
        return value == 0 ? "0" : QuantityText.format(value, measure);
    }

    /** A regular expression for the texts of such quantities; loose, the reader itself is strict. */
    String pattern() {
        String sign = least >= 0 ? "\\+?" : "[-+\u2212]?";
        String number = sign + "[0-9.]+([eE][-+]?[0-9]+)?";
        return measure.usualUnit().isEmpty() || measure == Measure.SHARE
                ? number + " *%?"
                : number + " *[A-Za-z\u00b0\u00b5\u03bc(].*";
    }
}
