package gripwright.report;

import gripwright.model.Project;
import gripwright.study.Finding;
import gripwright.study.Finding.Topic;
import gripwright.study.Findings;
import gripwright.study.MapResult;
import gripwright.study.TrialsResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The answer in at most ten lines: what the hand picks up, how far off, and what fails most. */
public final class Answer {
    public static final int MOST_LINES = 10;

    private Answer() {}

    /** Sentences, most important first; every number in them comes from the results. */
    public static List<String> lines(Project project, Optional<TrialsResult> trials, List<MapResult> maps) {
        List<Finding> ofTrials = trials.map(t -> Findings.of(project, t)).orElse(List.of());
        List<String> lines = new ArrayList<>();
        lines.addAll(texts(ofTrials, Topic.ANSWER));
        lines.addAll(texts(ofTrials, Topic.OBJECTS));
        for (MapResult map : maps) {
            // The first sentence names object and grip; the map itself shows the rest.
            texts(Findings.of(project, map), Topic.ANSWER).stream().limit(1).forEach(lines::add);
        }
        for (Finding f : ofTrials) {
            if (f.topic() == Topic.REASON && lines.size() < MOST_LINES - 1) {
                lines.add(f.text());
            }
        }
        lines.addAll(texts(ofTrials, Topic.CAUTION));
        if (lines.isEmpty()) {
            return List.of("No trials and no maps were made, so what the hand picks up is not answered here.");
        }
        return List.copyOf(lines.subList(0, Math.min(MOST_LINES, lines.size())));
    }

    private static List<String> texts(List<Finding> findings, Topic topic) {
        return findings.stream()
                .filter(f -> f.topic() == topic)
                .map(Finding::text)
                .toList();
    }
}
