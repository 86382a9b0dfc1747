package gripwright.units;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** "Did you mean": the word of a list that is nearest to a mistyped one. */
public final class Nearest {
    private static final int LONGEST = 60;

    private Nearest() {}

    /** The nearest of {@code words} by edits, if it takes no more than about a third of the letters. */
    public static Optional<String> to(String typed, Collection<String> words) {
        if (typed.isEmpty() || typed.length() > LONGEST) {
            return Optional.empty();
        }
        String best = null;
        double fewest = Math.max(1, typed.length() / 3) + 0.9;
        for (String word : words) {
            // A slip in upper and lower case is the nearest kind of slip.
            double edits = edits(typed, word) == 0
                    ? 0
                    : Math.min(
                            edits(typed, word),
                            0.5 + edits(typed.toLowerCase(Locale.ROOT), word.toLowerCase(Locale.ROOT)));
            if (edits < fewest && edits < Math.max(typed.length(), word.length())) {
                fewest = edits;
                best = word;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Insertions, deletions, replacements and swaps of neighbours (optimal string alignment). */
    static int edits(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            d[i][0] = i;
        }
        for (int j = 0; j <= b.length(); j++) {
            d[0][j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int replaced = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                d[i][j] = Math.min(replaced, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
