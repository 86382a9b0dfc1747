package gripwright.shape;

import gripwright.check.Check;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * A solid box about the origin, along the axes, with rounded edges. Edges below 0.01 mm count as rounded by 0.01 mm, so
 * that the normal is defined everywhere. Deeper inside than the edge radius the normal changes at once between faces.
 *
 * @param halfX half of the outer size along x [m]
 * @param halfY half of the outer size along y [m]
 * @param halfZ half of the outer size along z [m]
 * @param edge radius of the rounding of all edges [m]
 */
public record Box(double halfX, double halfY, double halfZ, double edge) implements Shape {
    public Box {
        Check.positive(halfX, "half size of the box along x", "m");
        Check.positive(halfY, "half size of the box along y", "m");
        Check.positive(halfZ, "half size of the box along z", "m");
        Profile.checkEdge(edge, Math.min(halfX, Math.min(halfY, halfZ)), "box");
    }

    @Override
    public double distance(double x, double y, double z) {
        double e = Profile.rounding(edge);
        double qx = Math.abs(x) - (halfX - e);
        double qy = Math.abs(y) - (halfY - e);
        double qz = Math.abs(z) - (halfZ - e);
        double deepest = Math.max(qx, Math.max(qy, qz));
        if (deepest <= 0) {
            return deepest - e;
        }
        double vx = Math.max(qx, 0);
        double vy = Math.max(qy, 0);
        double vz = Math.max(qz, 0);
        return Math.sqrt(vx * vx + vy * vy + vz * vz) - e;
    }

    @Override
    public void derivatives(double x, double y, double z, double[] gradient, double[] hessian) {
        double e = Profile.rounding(edge);
        double qx = Math.abs(x) - (halfX - e);
        double qy = Math.abs(y) - (halfY - e);
        double qz = Math.abs(z) - (halfZ - e);
        double sx = x < 0 ? -1 : 1;
        double sy = y < 0 ? -1 : 1;
        double sz = z < 0 ? -1 : 1;
        double vx = Math.max(qx, 0);
        double vy = Math.max(qy, 0);
        double vz = Math.max(qz, 0);
        int outside = (qx > 0 ? 1 : 0) + (qy > 0 ? 1 : 0) + (qz > 0 ? 1 : 0);
        if (outside <= 1) {
            boolean alongX = qx >= qy && qx >= qz;
            boolean alongY = !alongX && qy >= qz;
            boolean alongZ = !alongX && !alongY;
            Profile.plane(alongX ? sx : 0, alongY ? sy : 0, alongZ ? sz : 0, gradient, hessian);
            return;
        }
        double k = 1 / Math.sqrt(vx * vx + vy * vy + vz * vz);
        double nx = sx * vx * k;
        double ny = sy * vy * k;
        double nz = sz * vz * k;
        gradient[0] = nx;
        gradient[1] = ny;
        gradient[2] = nz;
        hessian[0] = qx > 0 ? k * (1 - nx * nx) : 0;
        hessian[1] = -k * nx * ny;
        hessian[2] = -k * nx * nz;
        hessian[3] = qy > 0 ? k * (1 - ny * ny) : 0;
        hessian[4] = -k * ny * nz;
        hessian[5] = qz > 0 ? k * (1 - nz * nz) : 0;
    }

    @Override
    public TableSupport support() {
        double e = Profile.rounding(edge);
        List<TableSupport.Ball> corners = new ArrayList<>();
        for (int corner = 0; corner < 8; corner++) {
            double x = (corner & 1) == 0 ? halfX - e : e - halfX;
            double y = (corner & 2) == 0 ? halfY - e : e - halfY;
            double z = (corner & 4) == 0 ? halfZ - e : e - halfZ;
            corners.add(new TableSupport.Ball(new Vec3(x, y, z), e));
        }
        return TableSupport.ofBalls(corners);
    }

    @Override
    public double boundingRadius() {
        double e = Profile.rounding(edge);
        return new Vec3(halfX - e, halfY - e, halfZ - e).length() + e;
    }

    @Override
    public double extent(Vec3 direction) {
        double e = Profile.rounding(edge);
        return Math.abs(direction.x()) * (halfX - e)
                + Math.abs(direction.y()) * (halfY - e)
                + Math.abs(direction.z()) * (halfZ - e)
                + e;
    }

    /** Exact, by Steiner's formula: the plain box that the rounding ball's centre fills, grown by the ball. */
    @Override
    public double volume() {
        double e = Profile.rounding(edge);
        double a = 2 * (halfX - e);
        double b = 2 * (halfY - e);
        double c = 2 * (halfZ - e);
        return a * b * c
                + 2 * (a * b + b * c + c * a) * e
                + Math.PI * (a + b + c) * e * e
                + 4 * Math.PI / 3 * e * e * e;
    }

    @Override
    public Vec3 centroid() {
        return Vec3.ZERO;
    }
}
