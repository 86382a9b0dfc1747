package gripwright.files;

import java.util.List;
import java.util.stream.Collectors;

/** Everything that is wrong in a project folder, at once, in the order of the files. */
public final class ProjectFaults extends RuntimeException {
    private static final long serialVersionUID = 1;
    private static final int MOST_SHOWN = 50;

    private final transient List<Fault> faults;

    public ProjectFaults(List<Fault> faults) {
        super(inWords(faults));
        this.faults = List.copyOf(faults);
    }

    public List<Fault> faults() {
        return faults;
    }

    private static String inWords(List<Fault> faults) {
        String shown = faults.stream().limit(MOST_SHOWN).map(Fault::text).collect(Collectors.joining("\n\n"));
        int more = faults.size() - MOST_SHOWN;
        return more > 0 ? shown + "\n\nand " + more + " more" : shown;
    }
}
