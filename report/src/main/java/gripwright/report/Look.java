package gripwright.report;

import gripwright.closing.Outcome;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The one look of pictures and pages: colours for light and dark ground, and the style sheets that use them.
 *
 * <p>Colours are chosen by contrast (WCAG 2.2) and by distance for the common colour-vision deficiencies; the tests
 * hold both.
 */
final class Look {
    private Look() {}

    /** Named colours on light paper, as #RRGGBB. */
    static final Map<String, String> LIGHT =
            colours("desk #E4E8E3 paper #FAFBF7 grid #E3E8E1 rule #C3CCC6 edge #7C8A8A quiet #4D5C61 ink #17262C "
                    + "edit #0B57A4 moved #8F4200 face1 #FFFFFF face2 #F0F3EE face3 #E1E7E1 rubber #D5DBD6 "
                    + "g-held #1F6F73 g-dropped #B49C62 g-pushed #B4DBF8 g-knocked #FCDDB8 g-thrown #D3C08A "
                    + "g-squeezed #9E7D50 g-landed #5AA0D0 g-missed #FAFBF7 g-undecided #FAFBF7 "
                    + "share0 #EEF2EF share1 #DEE6E4 share2 #C4D5D4 share3 #AAC4C3 "
                    + "share4 #90B3B3 share5 #76A2A3 share6 #5C9192 share7 #408083");

    /** The same names on dark paper. */
    static final Map<String, String> DARK =
            colours("desk #0D1518 paper #141F23 grid #203036 rule #35484E edge #6F8489 quiet #A3B3B5 ink #E6ECE8 "
                    + "edit #84BDF5 moved #F0A868 face1 #26363B face2 #1E2C31 face3 #192529 rubber #31444A "
                    + "g-held #63BDBB g-dropped #75592A g-pushed #0A3355 g-knocked #4A2B06 g-thrown #4C4645 "
                    + "g-squeezed #8A8148 g-landed #466F98 g-missed #141F23 g-undecided #141F23 "
                    + "share0 #18262B share1 #1C2E34 share2 #264146 share3 #305457 "
                    + "share4 #3A686A share5 #447D7D share6 #4E9291 share7 #58A7A6");

    /** Name of the ground of an outcome in the two tables. */
    static String ground(Outcome outcome) {
        return "g-" + Marks.key(outcome);
    }

    /**
     * Ground of a held share, in eighths, rounded down; 8 is the ground of held itself.
     *
     * @param share [-]
     */
    static String shareGround(double share) {
        int eighths = (int) Math.floor(8 * share + 1e-9);
        return eighths >= 8 ? ground(Outcome.HELD) : "share" + eighths;
    }

    /** A declaration of every colour as a CSS variable. */
    static String variables(Map<String, String> colours) {
        StringBuilder out = new StringBuilder();
        colours.forEach((name, value) ->
                out.append("--").append(name).append(':').append(value).append(';'));
        return out.toString();
    }

    /** Style of everything drawn, with colours as variables. */
    static String pictureStyle() {
        StringBuilder out = new StringBuilder(resource("picture.css"));
        for (Outcome outcome : Outcome.values()) {
            out.append('.').append(ground(outcome)).append("{fill:var(--").append(ground(outcome));
            out.append(")}\n");
        }
        for (int eighths = 0; eighths < 8; eighths++) {
            out.append(".share")
                    .append(eighths)
                    .append("{fill:var(--share")
                    .append(eighths)
                    .append(")}\n");
        }
        return out.toString();
    }

    /** The same with the light colours written out, for viewers that know no variables. */
    static String pictureStyleForFile() {
        String style = pictureStyle();
        for (Map.Entry<String, String> colour : LIGHT.entrySet()) {
            style = style.replace("var(--" + colour.getKey() + ")", colour.getValue());
        }
        return style.replace("currentColor", "#17262C")
                .replace("var(--sans)", SANS)
                .replace("var(--serif)", SERIF);
    }

    static final String SANS =
            "\"Segoe UI\",\"Noto Sans\",Roboto,Ubuntu,Cantarell,\"Liberation Sans\"," + "\"DejaVu Sans\",sans-serif";
    static final String SERIF = "Charter,\"Bitstream Charter\",\"Noto Serif\",Cambria,Georgia,\"Liberation Serif\","
            + "\"DejaVu Serif\",serif";

    /** Hatches and marks, referred to by id from every picture. */
    static String definitions() {
        return "<defs>" + hatch("hr", 45, "4.2") + hatch("gnd", -45, "5") + Marks.symbols() + "</defs>";
    }

    private static String hatch(String id, int turn, String pitch) {
        String ground =
                id.equals("gnd") ? "" : "<rect class=\"rubf\" width=\"" + pitch + "\" height=\"" + pitch + "\"/>";
        return "<pattern id=\"" + id + "\" width=\"" + pitch + "\" height=\"" + pitch
                + "\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(" + turn + ")\">" + ground
                + "<path class=\"hl\" d=\"M0 0V" + pitch + "\"/></pattern>";
    }

    /** Text of a file that lies beside this class. */
    static String resource(String name) {
        try (InputStream in = Look.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the program's own file " + name + " is missing; build it again");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, String> colours(String words) {
        String[] w = words.split(" ", -1);
        Map<String, String> map = new LinkedHashMap<>();
        for (int i = 0; i < w.length; i += 2) {
            map.put(w[i], w[i + 1]);
        }
        return java.util.Collections.unmodifiableMap(map);
    }
}
