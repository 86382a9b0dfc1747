package gripwright.cli;

import gripwright.model.Project;
import gripwright.study.Finding;
import gripwright.study.Finding.Topic;
import gripwright.study.Findings;
import gripwright.study.MapResult;
import gripwright.study.TrialsResult;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** What a project's studies say, in a few sentences: what is picked up, how far off, where and why it fails. */
final class Answer {
    private static final Set<Topic> FIRST = EnumSet.of(Topic.ANSWER, Topic.OBJECTS);
    private static final int REASONS = 3;

    private Answer() {}

    static List<String> lines(Project project, TrialsResult trials, List<MapResult> maps) {
        List<Finding> findings = Findings.of(project, trials);
        List<String> lines = new ArrayList<>();
        findings.stream().filter(f -> FIRST.contains(f.topic())).forEach(f -> lines.add(f.text()));
        for (MapResult map : maps) {
            Findings.of(project, map).stream()
                    .filter(f -> f.topic() == Topic.ANSWER)
                    .forEach(f -> lines.add(f.text()));
        }
        findings.stream().filter(f -> f.topic() == Topic.REASON).limit(REASONS).forEach(f -> lines.add(f.text()));
        return lines;
    }

    /** Everything else that was found, for the report. */
    static List<String> findings(Project project, TrialsResult trials, List<MapResult> maps) {
        List<String> lines = new ArrayList<>();
        List<Finding> all = new ArrayList<>(Findings.of(project, trials));
        maps.forEach(map -> all.addAll(Findings.of(project, map)));
        all.stream().filter(f -> !FIRST.contains(f.topic())).forEach(f -> lines.add(f.text()));
        return lines;
    }
}
