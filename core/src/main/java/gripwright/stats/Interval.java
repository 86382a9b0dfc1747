package gripwright.stats;

/** Two ends of an interval, low first, in the unit of what is estimated. */
public record Interval(double low, double high) {
    public boolean contains(double value) {
        return low <= value && value <= high;
    }
}
