package gripwright.cli;

import gripwright.closing.Numerics;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** How finely the pads are divided. */
final class PadOption {
    @Option(
            names = "--pad-points",
            paramLabel = "ROWSxCOLUMNS",
            converter = Reader.class,
            description = "Pad points along and across a phalanx; 14x6 unless said otherwise. More are slower.")
    private Numerics numerics = Numerics.DEFAULT;

    Numerics numerics() {
        return numerics;
    }

    /** Reads "28x12". */
    static final class Reader implements ITypeConverter<Numerics> {
        @Override
        public Numerics convert(String value) {
            if (!value.matches("\\d{1,4}x\\d{1,4}")) {
                throw new TypeConversionException("'" + value + "' is not rows x columns; expected such as 28x12");
            }
            String[] parts = value.split("x", -1);
            try {
                return Numerics.DEFAULT.withPadPoints(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(String.valueOf(e.getMessage()));
            }
        }
    }
}
