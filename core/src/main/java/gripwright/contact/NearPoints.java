package gripwright.contact;

/**
 * The points of a body that may touch the object in its present pose, with their places y = R x + t in the object's
 * frame. Workspace: one list at a time.
 */
final class NearPoints {
    private final PadPoints points;
    private final Clearance clearance;
    final int[] point;
    final double[] x;
    final double[] y;
    final double[] z;

    NearPoints(PadPoints points, Clearance clearance) {
        this.points = points;
        this.clearance = clearance;
        int n = points.points().size();
        point = new int[n];
        x = new double[n];
        y = new double[n];
        z = new double[n];
    }

    /**
     * Lists the points of all rows of a body that are not known to be clear, in their order, without their places.
     *
     * @param r rotation of all bodies in the object's frame, row-major, 9 per body
     * @param t origin of all bodies in the object's frame [m], 3 per body
     * @return how many; 0 if nothing can touch
     */
    int list(int body, double[] r, double[] t) {
        int n = 0;
        double motion = clearance.bodyMotion(body, r, t);
        if (motion < clearance.body[body]) {
            return 0;
        }
        double turn = clearance.turnMotion(body, r);
        for (int row = points.bodyRow[body]; row < points.bodyRow[body + 1]; row++) {
            if (!clearance.rowIsClear(body, row, motion, turn, r, t)) {
                n = addRow(row, n);
            }
        }
        return n;
    }

    private int addRow(int row, int from) {
        int n = from;
        for (int p = points.rowPoint[row]; p < points.rowPoint[row + 1]; p++) {
            point[n++] = p;
        }
        return n;
    }

    /** The same with their places. */
    int locate(int body, double[] r, double[] t) {
        int n = list(body, r, t);
        for (int i = 0; i < n; i++) {
            place(i, body, r, t);
        }
        return n;
    }

    /** All points of one row with their places, whatever is known of it. */
    int locateRow(int body, int row, double[] r, double[] t) {
        int n = addRow(row, 0);
        for (int i = 0; i < n; i++) {
            place(i, body, r, t);
        }
        return n;
    }

    /** Finds the place of the i-th point listed. */
    void place(int i, int body, double[] r, double[] t) {
        int b9 = 9 * body;
        int b3 = 3 * body;
        int p3 = 3 * point[i];
        double px = points.place[p3];
        double py = points.place[p3 + 1];
        double pz = points.place[p3 + 2];
        x[i] = r[b9] * px + r[b9 + 1] * py + r[b9 + 2] * pz + t[b3];
        y[i] = r[b9 + 3] * px + r[b9 + 4] * py + r[b9 + 5] * pz + t[b3 + 1];
        z[i] = r[b9 + 6] * px + r[b9 + 7] * py + r[b9 + 8] * pz + t[b3 + 2];
    }
}
