package gripwright.report;

import gripwright.model.Project;
import java.util.List;

/** Bench measurements that replace assumptions of a project, each a sheet to print. */
public final class BenchSheetPage {
    private BenchSheetPage() {}

    /** The whole HTML file. */
    public static String write(Project project) {
        PageFrame frame = new PageFrame("Bench measurements: " + project.hand().name(), BenchSheet.STYLE);
        List.of(TiltSheet.of(project), SpringSheet.of(project), ShearSheet.of(project), TendonSheet.of(project))
                .forEach(sheet -> {
                    if (!sheet.rows().isEmpty()) {
                        sheet.write(frame);
                    }
                });
        return frame.done();
    }
}
