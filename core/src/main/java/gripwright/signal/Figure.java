package gripwright.signal;

import gripwright.stats.Interval;
import java.util.Optional;

/**
 * A figure with its 95 % interval, or why the log does not support it and what to record.
 *
 * @param value in the unit of its kind; NaN if refused
 * @param interval 95 %
 * @param refusal what is missing and what to record; empty if there is a value
 */
public record Figure(FigureKind kind, double value, Interval interval, Optional<String> refusal) {
    /** A value with its interval. */
    static Figure of(FigureKind kind, double value, double low, double high) {
        return new Figure(kind, value, new Interval(low, high), Optional.empty());
    }

    /** A value with half its interval's width. */
    static Figure around(FigureKind kind, double value, double half) {
        return of(kind, value, value - half, value + half);
    }

    static Figure refused(FigureKind kind, String why) {
        return new Figure(kind, Double.NaN, new Interval(Double.NaN, Double.NaN), Optional.of(why));
    }

    public boolean known() {
        return refusal.isEmpty();
    }
}
