package gripwright.files;

import gripwright.closing.ClosingSummary;
import gripwright.closing.Conditions;
import gripwright.closing.Numerics;
import gripwright.closing.Outcome;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The text of the file {@code results/kept-runs.txt}: finished runs, one a line, so that a study that was stopped or
 * killed goes on where it was. A run is known by its hand, object, grip, calculation and conditions, so it does not
 * matter who made it. The first line says of which inputs and which version; runs of others are not used.
 */
public final class KeptRunFile {
    public static final String FOLDER = "results";
    public static final String NAME = "kept-runs.txt";

    private static final int KEY_WORDS = 16;
    private static final int RUN_WORDS = 14;

    private KeptRunFile() {}

    /**
     * The first line.
     *
     * @param version of the program
     * @param inputs hash of the project's files
     */
    public static String head(String version, String inputs) {
        return "gripwright kept runs 1\t" + version + "\t" + inputs;
    }

    /** What runs of one hand, calculation, object and grip have in common. */
    public static String pair(String hand, Numerics numerics, String object, String grip) {
        return word(hand) + "\t" + numerics.padRows() + "\t" + numerics.padColumns() + "\t" + numerics.stepScale()
                + "\t" + numerics.viscosityScale() + "\t" + word(object) + "\t" + word(grip);
    }

    /** What a run is known by. */
    public static String key(String pair, Conditions c) {
        return pair + "\t" + c.x() + "\t" + c.y() + "\t" + c.turn() + "\t" + c.height() + "\t" + c.padFriction() + "\t"
                + c.tableFriction() + "\t" + c.mass() + "\t" + c.padStiffness() + "\t" + c.springRate();
    }

    /** One run, without line end. Java writes as many digits as it needs to read the very same number again. */
    public static String line(String key, ClosingSummary s) {
        return key + "\t" + s.outcome().name() + "\t" + s.travel() + "\t" + s.travelX() + "\t" + s.travelY() + "\t"
                + s.tilt() + "\t" + s.sink() + "\t" + s.landingForce() + "\t" + s.peakForce() + "\t" + s.peakPressure()
                + "\t" + s.links() + "\t" + s.objectResidual() + "\t" + s.jointResidual() + "\t" + s.steps() + "\t"
                + s.iterations();
    }

    /**
     * The runs of a file by key; none if it is missing, of other inputs or unreadable. A line that was cut off when the
     * program was killed is left out.
     */
    public static Map<String, ClosingSummary> read(Path file, String head) {
        Map<String, ClosingSummary> runs = new LinkedHashMap<>();
        if (!Files.isRegularFile(file)) {
            return runs;
        }
        try {
            List<String> lines = new String(Files.readAllBytes(file), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            if (lines.isEmpty() || !lines.get(0).equals(head)) {
                return runs;
            }
            for (String line : lines.subList(1, lines.size())) {
                String[] words = line.split("\t", -1);
                if (words.length == KEY_WORDS + RUN_WORDS) {
                    runs.put(
                            String.join("\t", List.of(words).subList(0, KEY_WORDS)),
                            run(List.of(words).subList(KEY_WORDS, words.length)));
                }
            }
        } catch (IOException | IllegalArgumentException e) {
            runs.clear(); // damaged: the runs are made again
        }
        return runs;
    }

    private static ClosingSummary run(List<String> w) {
        return new ClosingSummary(
                Outcome.valueOf(w.get(0)),
                Double.parseDouble(w.get(1)),
                Double.parseDouble(w.get(2)),
                Double.parseDouble(w.get(3)),
                Double.parseDouble(w.get(4)),
                Double.parseDouble(w.get(5)),
                Double.parseDouble(w.get(6)),
                Double.parseDouble(w.get(7)),
                Double.parseDouble(w.get(8)),
                Integer.parseInt(w.get(9)),
                Double.parseDouble(w.get(10)),
                Double.parseDouble(w.get(11)),
                Integer.parseInt(w.get(12)),
                Integer.parseInt(w.get(13)));
    }

    private static String word(String name) {
        return name.replaceAll("\\s", " ");
    }
}
