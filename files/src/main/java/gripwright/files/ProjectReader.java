package gripwright.files;

import gripwright.model.Hand;
import gripwright.model.Need;
import gripwright.model.Project;
import gripwright.pad.PadSetup;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads a project folder: hand.yaml and need.yaml, every fault of both at once, and pads.yaml if there is one. */
public final class ProjectReader {
    public static final String HAND = "hand.yaml";
    public static final String NEED = "need.yaml";

    /** Optional. */
    public static final String PADS = "pads.yaml";

    private ProjectReader() {}

    /**
     * A project and where its values stand.
     *
     * @param places by file and key, such as "hand.yaml: fingers.left.joints[0].rest"
     * @param pads what pads.yaml says, if there is one
     */
    public record Marked(Project project, Map<String, Place> places, Optional<PadSetup> pads) {
        public Marked {
            places = Map.copyOf(places);
        }
    }

    /**
     * Reads the folder.
     *
     * @throws ProjectFaults with all faults of both files, if there is any
     */
    public static Project read(Path folder) {
        return readMarked(folder).project();
    }

    /** As {@link #read}, with the place of every value. */
    public static Marked readMarked(Path folder) {
        return readMarked(folder, Map.of());
    }

    /**
     * As {@link #readMarked(Path)}, with other contents in the place of files, to see what a change would mean.
     *
     * @param instead by file name
     */
    public static Marked readMarked(Path folder, Map<String, byte[]> instead) {
        Reading reading = new Reading(folder);
        reading.instead(instead);
        Hand hand = file(HAND, HandKeys.HAND, reading);
        Need need = file(NEED, NeedKeys.NEED, reading);
        PadSetup pads = null;
        if (hand != null && Files.exists(folder.resolve(PADS))) { // its pads lie on those of a sound hand
            reading.define(PadKeys.PALM, PadKeys.PALM, hand.palm());
            pads = file(PADS, PadKeys.FILE, reading);
        }
        if (reading.faultCount() > 0) {
            throw new ProjectFaults(reading.faults());
        }
        if (hand == null || need == null) {
            throw new IllegalStateException("the project was not read, yet no fault was noted");
        }
        return new Marked(new Project(hand, need, reading.assumptions()), reading.places(), Optional.ofNullable(pads));
    }

    private static <T> @Nullable T file(String file, Section<T> section, Reading reading) {
        List<Fault> faults = new ArrayList<>();
        SourceText source = reading.source(file, faults);
        Tree tree = source == null ? null : TreeReader.read(source, faults);
        reading.addAll(faults);
        if (source == null || tree == null) {
            return null;
        }
        reading.start(source);
        return section.read(tree, "", reading);
    }
}
