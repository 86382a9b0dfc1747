package gripwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import gripwright.closing.Outcome;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The colours by numbers from outside: contrast as WCAG 2.2 defines it (relative luminance and contrast ratio; 4.5 for
 * text, 3 for lines and controls), colour vision by the matrices of G. M. Machado, M. M. Oliveira and L. A. F.
 * Fernandes, "A physiologically-based model for simulation of color vision deficiency" (2009), severity 1.0 on linear
 * RGB, and distances in OKLab (B. Ottosson, 2020). Formulas and matrices from memory.
 */
class PaletteTest {
    /** Nearest two grounds may come, in hundredths of OKLab. Below about 2 a difference is hard to see (no source). */
    private static final double LEAST_DISTANCE = 8.5;

    private static final double[][] PROTANOPIA = {
        {0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}
    };
    private static final double[][] DEUTERANOPIA = {
        {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}
    };
    private static final double[][] TRITANOPIA = {
        {1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}
    };
    private static final double[][] NORMAL = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};

    @Test
    void referenceContrastOfBlackOnWhiteIs21() {
        // WCAG 2.2, definition of contrast ratio: ranges from 1 to 21.
        assertThat(contrast("#000000", "#FFFFFF")).isEqualTo(21);
        assertThat(contrast("#777777", "#777777")).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({
        "ink, paper, 4.5", "quiet, paper, 4.5", "edit, paper, 4.5", "ink, desk, 4.5", "quiet, desk, 4.5",
        "ink, face1, 4.5", "ink, face2, 4.5", "ink, face3, 4.5", "quiet, face3, 4.5", "ink, rubber, 4.5",
        "edge, paper, 3", "g-held, paper, 3"
    })
    void textAndLinesStandOutFromTheirGroundInLightAndDark(String front, String ground, double least) {
        for (Map<String, String> palette : List.of(Look.LIGHT, Look.DARK)) {
            assertThat(contrast(colour(palette, front), colour(palette, ground)))
                    .isGreaterThanOrEqualTo(least);
        }
    }

    @Test
    void marksAndTexturesStandOutFromEveryOutcomeGround() {
        for (Map<String, String> palette : List.of(Look.LIGHT, Look.DARK)) {
            for (Outcome o : Outcome.values()) {
                String ground = colour(palette, Look.ground(o));
                // On held nothing but paper-coloured lines are drawn.
                String line = colour(palette, o == Outcome.HELD ? "paper" : "ink");
                assertThat(contrast(line, ground)).as(o.words()).isGreaterThanOrEqualTo(3);
            }
        }
    }

    @Test
    void outcomeGroundsStayApartForEveryCommonColourVision() {
        for (Map<String, String> palette : List.of(Look.LIGHT, Look.DARK)) {
            for (double[][] eye : List.of(NORMAL, PROTANOPIA, DEUTERANOPIA, TRITANOPIA)) {
                for (Outcome a : Outcome.values()) {
                    for (Outcome b : Outcome.values()) {
                        // Undecided has the ground of missed and is told by its frame and mark.
                        if (a.compareTo(b) < 0 && a.decided() && b.decided()) {
                            double d = distance(
                                    seen(colour(palette, Look.ground(a)), eye),
                                    seen(colour(palette, Look.ground(b)), eye));
                            assertThat(d).as(a + " and " + b).isGreaterThan(LEAST_DISTANCE);
                        }
                    }
                }
            }
        }
    }

    @Test
    void bothPalettesHoldTheSameNames() {
        assertThat(Look.LIGHT.keySet()).isEqualTo(Look.DARK.keySet());
    }

    @Test
    void everyColourAPictureAsksForExists() {
        java.util.regex.Matcher asked =
                java.util.regex.Pattern.compile("var\\(--([a-z0-9-]+)\\)").matcher(Look.pictureStyle());
        while (asked.find()) {
            String name = asked.group(1);
            assertThat(Look.LIGHT.containsKey(name) || List.of("sans", "serif").contains(name))
                    .as(name)
                    .isTrue();
        }
    }

    private static String colour(Map<String, String> palette, String name) {
        String value = palette.get(name);
        if (value == null) {
            throw new AssertionError("no colour is called " + name);
        }
        return value;
    }

    private static double[] linear(String hex) {
        double[] out = new double[3];
        for (int i = 0; i < 3; i++) {
            double v = Integer.parseInt(hex.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            out[i] = v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
        }
        return out;
    }

    private static double contrast(String a, String b) {
        double x = luminance(a);
        double y = luminance(b);
        return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
    }

    private static double luminance(String hex) {
        double[] c = linear(hex);
        return 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
    }

    private static double[] seen(String hex, double[][] eye) {
        double[] c = linear(hex);
        double[] out = new double[3];
        for (int i = 0; i < 3; i++) {
            out[i] = Math.min(1, Math.max(0, eye[i][0] * c[0] + eye[i][1] * c[1] + eye[i][2] * c[2]));
        }
        return out;
    }

    private static double distance(double[] a, double[] b) {
        double[] p = oklab(a);
        double[] q = oklab(b);
        return 100 * Math.sqrt(Math.pow(p[0] - q[0], 2) + Math.pow(p[1] - q[1], 2) + Math.pow(p[2] - q[2], 2));
    }

    private static double[] oklab(double[] c) {
        double l = Math.cbrt(0.4122214708 * c[0] + 0.5363325363 * c[1] + 0.0514459929 * c[2]);
        double m = Math.cbrt(0.2119034982 * c[0] + 0.6806995451 * c[1] + 0.1073969566 * c[2]);
        double s = Math.cbrt(0.0883024619 * c[0] + 0.2817188376 * c[1] + 0.6299787005 * c[2]);
        return new double[] {
            0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
            1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
            0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s
        };
    }
}
