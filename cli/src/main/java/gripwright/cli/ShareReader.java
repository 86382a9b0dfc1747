package gripwright.cli;

import gripwright.units.Measure;
import gripwright.units.QuantityText;
import gripwright.units.UnitFault;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads "15 %" or 0.15, above 0 and at most 100 %. */
final class ShareReader implements ITypeConverter<Double> {
    @Override
    public Double convert(String value) {
        double share;
        try {
            share = QuantityText.value(value, Measure.SHARE);
        } catch (UnitFault fault) {
            throw new TypeConversionException(fault.getMessage() + "; expected " + fault.expected()
                    + fault.suggestion().map(s -> "; did you mean '" + s + "'?").orElse(""));
        }
        if (!(share > 0 && share <= 1)) {
            throw new TypeConversionException("'" + value + "' is not above 0 % and at most 100 %");
        }
        return share;
    }
}
