package gripwright.units;

import com.code_intelligence.jazzer.junit.FuzzTest;
import gripwright.fuzz.Limit;
import java.nio.charset.StandardCharsets;

/** Any text is a quantity or is refused by {@link UnitFault}. */
class QuantityFuzz {
    @FuzzTest
    void anyTextIsReadOrRefused(byte[] bytes) {
        Limit.hold(() -> read(bytes));
    }

    private static void read(byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        try {
            QuantityText.Quantity q = QuantityText.quantity(text);
            if (!Double.isFinite(q.value())) {
                throw new AssertionError("'" + text + "' was read as " + q.value());
            }
        } catch (UnitFault refused) {
            needMessage(refused);
        }
        for (Measure measure : Measure.values()) {
            try {
                QuantityText.measured(text, measure);
                QuantityText.scattering(text, measure);
            } catch (UnitFault refused) {
                needMessage(refused);
            }
        }
    }

    private static void needMessage(UnitFault refused) {
        if (refused.getMessage() == null || refused.getMessage().isBlank()) {
            throw new AssertionError("refused without a reason", refused);
        }
    }
}
