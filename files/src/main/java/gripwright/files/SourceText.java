package gripwright.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** One project file as text, read with care: it may be anything. */
record SourceText(String file, String text, List<String> lines) {
    /** A project file is a few kilobytes; nobody types a megabyte. */
    static final int GREATEST_SIZE = 1_000_000;

    private static final Pattern TAB_INDENT = Pattern.compile("(?m)^ *(\\t)");

    static SourceText of(String file, String text) {
        return new SourceText(file, text, List.of(text.split("\r\n|\r|\n", -1)));
    }

    Fault fault(Place place, String message, String expected, @Nullable String suggestion) {
        String line = place.line() <= lines.size() ? lines.get(place.line() - 1) : "";
        return new Fault(file, place.line(), place.column(), line, message, expected, suggestion);
    }

    /** Reads a file, or says in {@code faults} why not and returns null. */
    static @Nullable SourceText read(Path folder, String file, List<Fault> faults) {
        Path path = folder.resolve(file);
        SourceText empty = of(file, "");
        try {
            if (!Files.exists(path)) {
                faults.add(empty.fault(
                        Place.START,
                        "there is no file " + file + " in " + folder,
                        "a project folder with hand.yaml and need.yaml; `gripwright new DIR` writes one to start from",
                        null));
                return null;
            }
            if (!Files.isRegularFile(path)) {
                faults.add(empty.fault(Place.START, file + " is not a file", "a text file", null));
                return null;
            }
            byte[] bytes = readUpTo(path, GREATEST_SIZE + 1);
            long size = Math.max(bytes.length, Files.size(path));
            if (size > GREATEST_SIZE) {
                faults.add(empty.fault(
                        Place.START,
                        file + " has " + size + " bytes",
                        "at most " + GREATEST_SIZE + " bytes; is this the right file?",
                        null));
                return null;
            }
            return decode(file, bytes, faults);
        } catch (IOException e) {
            faults.add(empty.fault(
                    Place.START,
                    file + " cannot be read: " + e.getClass().getSimpleName() + " " + e.getMessage(),
                    "a file that this user may read",
                    null));
            return null;
        }
    }

    static byte[] readUpTo(Path path, int most) throws IOException {
        if (Files.size(path) >= most) {
            return new byte[0]; // far too large: its size says so, no need to read it
        }
        try (InputStream in = Files.newInputStream(path)) {
            return in.readNBytes(most);
        }
    }

    static @Nullable SourceText decode(String file, byte[] bytes, List<Fault> faults) {
        SourceText source = utf8(file, bytes, faults);
        if (source == null) {
            return null;
        }
        if (source.text.isBlank()) {
            faults.add(source.fault(
                    Place.START,
                    file + " is empty",
                    "the keys of " + file + "; `gripwright new DIR` writes an example",
                    null));
            return null;
        }
        return source.hasTabs(faults) ? null : source;
    }

    /** Bytes of any text file as text without a byte order mark, or null after noting where they are not UTF-8. */
    static @Nullable SourceText utf8(String file, byte[] bytes, List<Fault> faults) {
        String text;
        ByteBuffer in = ByteBuffer.wrap(bytes);
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(in)
                    .toString();
        } catch (CharacterCodingException e) {
            // The lenient decoder turns the first bad byte into U+FFFD: everything before it is sound.
            int sound = in.position();
            String before = new String(Arrays.copyOf(bytes, sound), StandardCharsets.UTF_8);
            String lenient = new String(bytes, StandardCharsets.UTF_8);
            faults.add(of(file, lenient)
                    .fault(
                            endOf(before),
                            "byte " + (sound + 1) + " (0x" + Integer.toHexString(bytes[sound] & 0xff)
                                    + ") is not valid UTF-8",
                            "a file saved as UTF-8 (most editors: save with encoding)",
                            null));
            return null;
        }
        return of(file, text.startsWith("\ufeff") ? text.substring(1) : text);
    }

    private static Place endOf(String before) {
        List<String> lines = List.of(before.split("\r\n|\r|\n", -1));
        int column = lines.get(lines.size() - 1).length() + 1;
        return new Place(lines.size(), column, lines.size(), column + 1);
    }

    /** YAML forbids tabs in the indentation; said here for every line, in plainer words than the parser's. */
    private boolean hasTabs(List<Fault> faults) {
        boolean found = false;
        for (int i = 0; i < lines.size(); i++) {
            Matcher tab = TAB_INDENT.matcher(lines.get(i));
            if (tab.find() && !lines.get(i).isBlank()) {
                int column = tab.start(1) + 1;
                faults.add(fault(
                        new Place(i + 1, column, i + 1, column + 1),
                        "a tab in the indentation",
                        "blanks only; YAML does not allow tabs there",
                        null));
                found = true;
            }
        }
        return found;
    }
}
