package gripwright.cli;

import gripwright.units.Measure;
import gripwright.units.QuantityText;
import gripwright.units.UnitFault;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads how well a place is known, "2 mm": 0 to 50 mm. */
final class PlacingReader implements ITypeConverter<Double> {
    private static final double MOST = 0.05;

    @Override
    public Double convert(String value) {
        double error;
        try {
            error = QuantityText.value(value, Measure.LENGTH);
        } catch (UnitFault fault) {
            throw new TypeConversionException(fault.getMessage() + "; expected " + fault.expected()
                    + fault.suggestion().map(s -> "; did you mean '" + s + "'?").orElse(""));
        }
        if (!(error >= 0 && error <= MOST)) {
            throw new TypeConversionException(
                    "'" + value + "' is no error of a measured place; expected 0 mm to 50 mm");
        }
        return error;
    }
}
