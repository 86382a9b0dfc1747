package gripwright.report;

import gripwright.closing.ClosingDetail;
import gripwright.closing.Criteria;
import gripwright.closing.HoldDetail;
import gripwright.closing.Numerics;
import gripwright.model.Project;
import gripwright.pad.PadAnswer;
import gripwright.pad.ScanAnswer;
import gripwright.pad.TouchAnswer;
import gripwright.study.MapResult;
import gripwright.study.Refinement;
import gripwright.study.TrialsResult;
import gripwright.study.VaryResult;
import java.util.List;
import java.util.Optional;

/**
 * Everything a report says. The report reads no clock and no file: what is not in here is not in it.
 *
 * @param closings runs to be shown as film strips, in order; their frames should have been recorded
 * @param maps capture maps, in order
 * @param holds tests of holds, in order; may be empty
 * @param pads what pads with chips feel; empty if the project has none
 * @param vary what changes of the hand do, if that was looked at
 * @param refined closings calculated finer, in order; may be empty
 * @param criteria by which the runs were judged
 * @param numerics with which they were calculated
 */
public record ReportInput(
        Project project,
        List<Closing> closings,
        List<MapResult> maps,
        Optional<TrialsResult> trials,
        List<Hold> holds,
        Optional<Pads> pads,
        Optional<VaryResult> vary,
        List<Refined> refined,
        Criteria criteria,
        Numerics numerics,
        Provenance provenance) {
    /** Closings of one of the project's objects with one of its grips, calculated finer. */
    public record Refined(String object, String grip, List<Refinement> refinements) {
        public Refined {
            refinements = List.copyOf(refinements);
        }
    }

    /** A run with one of the project's objects and grips, and a note on why it is shown (may be empty). */
    public record Closing(String object, String grip, String note, ClosingDetail detail) {}

    /** Tests of the hold of one of the project's objects with one of its grips. */
    public record Hold(String object, String grip, HoldDetail detail) {}

    /** Answers about pads with chips: what they feel, how they are read, what a touch does (empty if unreadable). */
    public record Pads(List<PadAnswer> answers, ScanAnswer scan, List<TouchAnswer> touched) {
        public Pads {
            answers = List.copyOf(answers);
            touched = List.copyOf(touched);
        }
    }

    /**
     * What the report was made from.
     *
     * @param version of this program
     * @param seed of the trials
     * @param inputHash of the project's files
     * @param date as it is to be printed
     * @param command that made it
     * @param files read, as named in the project folder
     */
    public record Provenance(
            String version, long seed, String inputHash, String date, String command, List<String> files) {
        public Provenance {
            files = List.copyOf(files);
        }
    }

    public ReportInput {
        closings = List.copyOf(closings);
        maps = List.copyOf(maps);
        holds = List.copyOf(holds);
        refined = List.copyOf(refined);
    }

    /** Without changes of the hand and finer calculations. */
    public ReportInput(
            Project project,
            List<Closing> closings,
            List<MapResult> maps,
            Optional<TrialsResult> trials,
            List<Hold> holds,
            Optional<Pads> pads,
            Criteria criteria,
            Numerics numerics,
            Provenance provenance) {
        this(project, closings, maps, trials, holds, pads, Optional.empty(), List.of(), criteria, numerics, provenance);
    }

    /** Without tests of holds and pads with chips. */
    public ReportInput(
            Project project,
            List<Closing> closings,
            List<MapResult> maps,
            Optional<TrialsResult> trials,
            Criteria criteria,
            Numerics numerics,
            Provenance provenance) {
        this(project, closings, maps, trials, List.of(), Optional.empty(), criteria, numerics, provenance);
    }
}
