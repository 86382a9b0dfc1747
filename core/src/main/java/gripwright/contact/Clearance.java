package gripwright.contact;

/**
 * What is known of the room between the hand's bodies and the object since the last commit, so that points that cannot
 * touch are left out.
 *
 * <p>At a commit the room of every body and row is measured (or bounded from below); until the next one, motion bounds
 * against that room decide. The bound of a turn is the largest stretch of R - R0. Workspace.
 */
final class Clearance {
    /** Rows farther from the object than this are not looked at point by point [m]. */
    static final double NEAR = 2e-3;

    /** The largest stretch of R - R0 is its Frobenius norm over sqrt 2; the last digits guard against rounding. */
    private static final double STRETCH = 0.5 * (1 + 1e-9);

    private final PadPoints points;
    private final double[] startRotation;
    private final double[] startPosition;
    /** Room of each body, row and point [m], 0 or less = in contact or unknown. */
    final double[] body;

    final double[] row;
    final double[] point;

    Clearance(PadPoints points) {
        this.points = points;
        body = new double[points.bodies];
        row = new double[points.rows];
        point = new double[points.points().size()];
        startRotation = new double[9 * points.bodies];
        startPosition = new double[3 * points.bodies];
    }

    /** Nothing is known: everything is looked at until the next commit. */
    void reset() {
        java.util.Arrays.fill(body, -1);
        java.util.Arrays.fill(row, -1);
    }

    /** Motion is counted from these poses on. */
    void start(double[] r, double[] t) {
        System.arraycopy(r, 0, startRotation, 0, startRotation.length);
        System.arraycopy(t, 0, startPosition, 0, startPosition.length);
    }

    /** Sets one room for a row and all its points [m]. */
    void setRow(int index, double room) {
        row[index] = room;
        for (int p = points.rowPoint[index]; p < points.rowPoint[index + 1]; p++) {
            point[p] = room;
        }
    }

    /** Everything that is remembered, for a snapshot. */
    double[][] numbers() {
        return new double[][] {point, row, body, startRotation, startPosition};
    }

    /** How far any point of a body may have moved against the object since the last commit [m]. */
    double bodyMotion(int b, double[] r, double[] t) {
        double[] c = points.bodyCentre;
        return centreMotion(b, r, t, c[3 * b], c[3 * b + 1], c[3 * b + 2]) + turnMotion(b, r) * points.bodyRadius[b];
    }

    double centreMotion(int b, double[] r, double[] t, double cx, double cy, double cz) {
        double[] r0 = startRotation;
        int b9 = 9 * b;
        int b3 = 3 * b;
        double x = t[b3]
                - startPosition[b3]
                + (r[b9] - r0[b9]) * cx
                + (r[b9 + 1] - r0[b9 + 1]) * cy
                + (r[b9 + 2] - r0[b9 + 2]) * cz;
        double y = t[b3 + 1]
                - startPosition[b3 + 1]
                + (r[b9 + 3] - r0[b9 + 3]) * cx
                + (r[b9 + 4] - r0[b9 + 4]) * cy
                + (r[b9 + 5] - r0[b9 + 5]) * cz;
        double z = t[b3 + 2]
                - startPosition[b3 + 2]
                + (r[b9 + 6] - r0[b9 + 6]) * cx
                + (r[b9 + 7] - r0[b9 + 7]) * cy
                + (r[b9 + 8] - r0[b9 + 8]) * cz;
        return Math.sqrt(x * x + y * y + z * z);
    }

    double turnMotion(int b, double[] r) {
        double sum = 0;
        for (int i = 9 * b; i < 9 * b + 9; i++) {
            double d = r[i] - startRotation[i];
            sum += d * d;
        }
        return Math.sqrt(STRETCH * sum);
    }

    /** True if no point of a row can touch, its body having moved by {@code motion} [m] and turned by {@code turn} [-]. */
    boolean rowIsClear(int b, int index, double motion, double turn, double[] r, double[] t) {
        double room = row[index];
        if (room > motion) {
            return true;
        }
        if (room <= 0) {
            return false;
        }
        double[] c = points.rowCentre;
        double left = room - turn * points.rowRadius[index];
        return left > 0 && centreMotion(b, r, t, c[3 * index], c[3 * index + 1], c[3 * index + 2]) < left;
    }
}
