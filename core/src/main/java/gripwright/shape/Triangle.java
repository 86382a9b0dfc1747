package gripwright.shape;

import gripwright.math.Vec3;

/** One facet of a mesh; seen from outside its corners run counter-clockwise [m]. */
public record Triangle(Vec3 a, Vec3 b, Vec3 c) {
    /** Twice the area, along the outward normal [m^2]. */
    public Vec3 areaVector() {
        return b.minus(a).cross(c.minus(a));
    }
}
