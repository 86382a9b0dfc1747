package gripwright.closing;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import gripwright.model.GraspObject;

/** How an object rests on the table at its nominal place, alone. */
record RestPose(Pose pose) {
    /** An object that tips by more than this from how it is said to stand is refused [rad]. */
    private static final double MOST_TIPPING = StrictMath.toRadians(25);

    /**
     * Lets the object settle from its stated stance.
     *
     * @param friction of the object on the table [-]
     * @throws IllegalArgumentException if it tips over or finds no rest
     */
    static RestPose find(GraspObject object, double friction) {
        StepSystem system = new StepSystem(Rig.empty(), object.shape());
        Stepper stepper = new Stepper(system, Numerics.DEFAULT);
        stepper.reset();
        system.object.mass = object.mass();
        Vec3 com = object.centreOfMass();
        system.object.centreOfMass[0] = com.x();
        system.object.centreOfMass[1] = com.y();
        system.object.centreOfMass[2] = com.z();
        Rotation stance = object.stance();
        System.arraycopy(stance.toArray(), 0, system.r, 0, 9);
        double bottom = -object.shape().extent(stance.applyInverse(Vec3.Z.times(-1)));
        system.p[2] = -bottom;
        system.table.reset(friction);
        system.commit();
        Vec3[] up = {stance.applyInverse(Vec3.Z)};
        Stepper.End end = stepper.settle(motion -> tipping(object, system, up[0]) > MOST_TIPPING);
        if (end == Stepper.End.STOPPED) {
            throw new IllegalArgumentException(object.name() + " does not stay as it is said to stand: it tips by more"
                    + " than 25 degrees; check how it stands, its shape and its centre of mass");
        }
        if (end == Stepper.End.STUCK) {
            throw new IllegalArgumentException(
                    object.name() + " finds no rest on the table (" + stepper.trouble + "); check how it stands");
        }
        // it is set down where it belongs: only its turn and height are kept from the settling
        return new RestPose(new Pose(new Vec3(0, 0, system.p[2]), Rotation.of(system.r, 0)));
    }

    private static double tipping(GraspObject object, StepSystem system, Vec3 up) {
        Vec3 now = Rotation.of(system.r, 0).apply(up);
        return switch (object.shape().symmetry()) {
            case FULL -> 0;
            case ABOUT_Z ->
                axisTilt(object.stance().column(2), Rotation.of(system.r, 0).column(2));
            case NONE -> StrictMath.acos(Math.max(-1, Math.min(1, now.z())));
        };
    }

    /** How far an axis has risen or sunk from its angle with the vertical [rad]; turning about the vertical is free. */
    static double axisTilt(Vec3 before, Vec3 after) {
        return Math.abs(StrictMath.acos(Math.max(-1, Math.min(1, before.z())))
                - StrictMath.acos(Math.max(-1, Math.min(1, after.z()))));
    }
}
