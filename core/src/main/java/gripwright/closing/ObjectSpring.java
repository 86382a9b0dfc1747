package gripwright.closing;

/** A spring between the object and a far end that a test moves: displacement control passes a peak without a jump. */
interface ObjectSpring {
    /**
     * Energy, and if wanted gradient and second derivative, added to the object's.
     *
     * @param p origin and
     * @param r rotation of the object
     */
    double accumulate(double[] p, double[] r, boolean wantGradient, boolean wantHessian);

    /** Moves the far end to a place along or an angle about the spring's axis [m or rad]. */
    void farEnd(double place);

    /** How far the object has moved along or turned about the axis [m or rad], world. */
    double moved(double[] p, double[] r);

    /** Force or torque on the object along the axis [N or N m]. */
    double load(double[] p, double[] r);
}
