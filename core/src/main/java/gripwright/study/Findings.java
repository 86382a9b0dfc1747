package gripwright.study;

import gripwright.model.Project;
import java.util.List;

/** Plain-language findings; every sentence is made from the numbers of the result and carries them. */
public final class Findings {
    private Findings() {}

    /**
     * What trials say: the answer, the objects, then object by object (the costliest first) why, where and how the grips
     * compare, then cautions.
     */
    public static List<Finding> of(Project project, TrialsResult result) {
        return new TrialsFindings(project, result).all();
    }

    /** What a capture map says: how far off, in which direction it ends and how, then cautions. */
    public static List<Finding> of(Project project, MapResult map) {
        return new MapFindings(map, project.hand().grip(map.grip()).approach()).all();
    }
}
