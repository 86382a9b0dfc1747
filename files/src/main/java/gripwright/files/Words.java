package gripwright.files;

import java.util.Collection;

/** Small pieces of English for messages. */
final class Words {
    private static final int LONGEST = 40;
    private static final int MOST = 12;

    private Words() {}

    static String clip(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST - 3) + "...";
    }

    /** "no entries", "1 entry", "3 entries". */
    static String entries(int count) {
        return count == 0 ? "no entries" : count == 1 ? "1 entry" : count + " entries";
    }

    /** The words joined by commas; long lists end in dots. */
    static String list(Collection<String> words) {
        String joined =
                String.join(", ", words.stream().limit(MOST).map(Words::clip).toList());
        return words.size() > MOST ? joined + ", ... (" + words.size() + " in all)" : joined;
    }
}
