package gripwright.cli;

import gripwright.closing.HoldPlan;
import gripwright.units.Measure;
import gripwright.units.QuantityText;
import gripwright.units.UnitFault;
import java.util.List;
import java.util.stream.Stream;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Quantities on the command line, read as in the project files. */
final class Quantities {
    private Quantities() {}

    /** A shift of the object, x then y [m]. */
    record Offset(double x, double y) {}

    /** Reads "12 mm, -5 mm". */
    static final class OffsetReader implements ITypeConverter<Offset> {
        @Override
        public Offset convert(String value) {
            List<String> parts =
                    Stream.of(value.split(",", -1)).map(String::strip).toList();
            if (parts.size() != 2) {
                throw new TypeConversionException("'" + value + "' has " + parts.size()
                        + (parts.size() == 1 ? " part" : " parts") + "; expected x and y, such as \"12 mm, -5 mm\"");
            }
            return new Offset(read(parts.get(0), Measure.LENGTH), read(parts.get(1), Measure.LENGTH));
        }
    }

    /** Reads "20 deg". */
    static final class AngleReader implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return read(value, Measure.ANGLE);
        }
    }

    /** Reads "60 mm", above 0. */
    static final class SpanReader implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            double span = read(value, Measure.LENGTH);
            if (!(span > 0)) {
                throw new TypeConversionException(
                        "'" + value + "' is not above 0 mm; expected half the width of the map");
            }
            return span;
        }
    }

    /** Reads "5 mm", above 0 and as far as pull tests go. */
    static final class TravelReader implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            double travel = read(value, Measure.LENGTH);
            try {
                return HoldPlan.DEFAULT.withTravel(travel).travel();
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException("'" + value + "': " + e.getMessage());
            }
        }
    }

    /** Reads "10 min", above 0 [s]. */
    static double duration(String value) {
        double seconds = read(value, Measure.TIME);
        if (!(seconds > 0)) {
            throw new TypeConversionException("'" + value + "' is not above 0 s; expected a duration, such as 10 min");
        }
        return seconds;
    }

    private static double read(String text, Measure measure) {
        try {
            return QuantityText.value(text, measure);
        } catch (UnitFault fault) {
            throw new TypeConversionException(fault.getMessage() + "; expected " + fault.expected()
                    + fault.suggestion().map(s -> "; did you mean '" + s + "'?").orElse(""));
        }
    }

    static int whole(String option, int value, int least, int most) {
        if (value < least || value > most) {
            throw new CommandFailure(
                    Exit.USAGE, option + " is " + value + "; expected a whole number of " + least + " to " + most);
        }
        return value;
    }
}
