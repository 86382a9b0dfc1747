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
    /** What fits on a terminal beside the tables; the report has everything. */
    private static final Set<Topic> SHORT =
            EnumSet.of(Topic.ANSWER, Topic.OBJECTS, Topic.REASON, Topic.WHERE, Topic.CAUTION);

    private static final int REASONS = 3;

    private Answer() {}

    /** About ten lines, for the end of a long run. */
    static List<String> lines(Project project, TrialsResult trials, List<MapResult> maps) {
        List<Finding> findings = Findings.of(project, trials);
        List<String> lines = new ArrayList<>(texts(findings, Topic.ANSWER, 1));
        maps.forEach(map -> lines.addAll(texts(Findings.of(project, map), Topic.ANSWER, 1)));
        lines.addAll(texts(findings, Topic.REASON, REASONS));
        return lines;
    }

    /** What trials or a map found, without what only the report has room for. */
    static List<Finding> inShort(List<Finding> findings) {
        return findings.stream().filter(f -> SHORT.contains(f.topic())).toList();
    }

    private static List<String> texts(List<Finding> findings, Topic topic, int most) {
        return findings.stream()
                .filter(f -> f.topic() == topic)
                .limit(most)
                .map(Finding::text)
                .toList();
    }
}
