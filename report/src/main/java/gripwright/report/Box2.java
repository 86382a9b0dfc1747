package gripwright.report;

/** An upright rectangle in the plane of a view [m]. */
record Box2(double left, double right, double low, double high) {
    static final Box2 NOTHING = new Box2(
            Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);

    Box2 with(double x, double y) {
        return new Box2(Math.min(left, x), Math.max(right, x), Math.min(low, y), Math.max(high, y));
    }

    Box2 with(Box2 other) {
        return new Box2(
                Math.min(left, other.left),
                Math.max(right, other.right),
                Math.min(low, other.low),
                Math.max(high, other.high));
    }

    Box2 grown(double by) {
        return new Box2(left - by, right + by, low - by, high + by);
    }

    double width() {
        return right - left;
    }

    double height() {
        return high - low;
    }
}
