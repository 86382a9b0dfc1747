package gripwright.units;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Text that is not the quantity it should be: what is wrong, at which character, what was expected, what is near. */
public final class UnitFault extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    private final int column;
    private final String expected;
    private final @Nullable String suggestion;

    UnitFault(String message, int column, String expected, @Nullable String suggestion) {
        super(message);
        this.column = column;
        this.expected = expected;
        this.suggestion = suggestion;
    }

    /** Where in the text, first character = 0. */
    public int column() {
        return column;
    }

    public String expected() {
        return expected;
    }

    /** The nearest valid text, if something is near. */
    public Optional<String> suggestion() {
        return Optional.ofNullable(suggestion);
    }
}
