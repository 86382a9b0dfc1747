package gripwright.cli;

import gripwright.closing.Conditions;
import picocli.CommandLine.Option;

/** Where the object stands before the one closing that is made. */
final class StartOptions {
    @Option(
            names = "--offset",
            paramLabel = "\"X, Y\"",
            converter = Quantities.OffsetReader.class,
            description = "Shift of the object from its nominal place, such as \"12 mm, -5 mm\".")
    private Quantities.Offset offset = new Quantities.Offset(0, 0);

    @Option(
            names = "--turn",
            paramLabel = "ANGLE",
            converter = Quantities.AngleReader.class,
            description = "Turn of the object about the vertical, such as \"20 deg\".")
    private double turn;

    Conditions conditions() {
        return Conditions.at(offset.x(), offset.y(), turn);
    }
}
