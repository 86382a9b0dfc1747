package gripwright.signal;

/** A stretch of bins, {@code to} excluded. */
record Span(int from, int to) {
    int length() {
        return to - from;
    }

    boolean holds(int bin) {
        return from <= bin && bin < to;
    }
}
