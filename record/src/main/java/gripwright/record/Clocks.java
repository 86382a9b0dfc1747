package gripwright.record;

import java.util.function.LongSupplier;

/**
 * The two clocks of a recording; tests hand in their own.
 *
 * @param nanos monotonic, from any start [ns]
 * @param wall UTC, may step [ms since 1970]
 */
public record Clocks(LongSupplier nanos, LongSupplier wall) {
    public static final Clocks REAL = new Clocks(System::nanoTime, System::currentTimeMillis);
}
