package gripwright.files;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Everything that is wrong in a project folder, at once, in the order of the files. */
public final class ProjectFaults extends RuntimeException {
    private static final long serialVersionUID = 1;
    private static final int MOST_SHOWN = 50;
    private static final int MOST_NAMED = 1000;

    private final transient List<Fault> faults;

    public ProjectFaults(List<Fault> faults) {
        super(inWords(faults));
        this.faults = List.copyOf(faults);
    }

    public List<Fault> faults() {
        return faults;
    }

    private static String inWords(List<Fault> faults) {
        List<String> parts =
                faults.stream().limit(MOST_SHOWN).map(Fault::text).collect(Collectors.toCollection(ArrayList::new));
        String named = faults.stream()
                .skip(MOST_SHOWN)
                .limit(MOST_NAMED - MOST_SHOWN)
                .map(Fault::headline)
                .collect(Collectors.joining("\n"));
        if (!named.isEmpty()) {
            parts.add(named);
        }
        if (faults.size() > MOST_NAMED) {
            parts.add("and " + (faults.size() - MOST_NAMED) + " more");
        }
        return String.join("\n\n", parts);
    }
}
