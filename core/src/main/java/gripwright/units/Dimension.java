package gripwright.units;

/**
 * Exponents of the base dimensions. Angle is one of them, so that a torque (N*m) is not a stiffness (N*m/rad); hardness
 * is one so that a Shore number cannot be taken for anything else.
 */
public record Dimension(int length, int mass, int time, int angle, int hardness, int current, int temperature) {
    public static final Dimension NONE = new Dimension(0, 0, 0, 0, 0);

    public Dimension(int length, int mass, int time, int angle, int hardness) {
        this(length, mass, time, angle, hardness, 0, 0);
    }

    public Dimension(int length, int mass, int time, int angle, int hardness, int current) {
        this(length, mass, time, angle, hardness, current, 0);
    }

    public Dimension times(Dimension other) {
        return new Dimension(
                length + other.length,
                mass + other.mass,
                time + other.time,
                angle + other.angle,
                hardness + other.hardness,
                current + other.current,
                temperature + other.temperature);
    }

    public Dimension power(int exponent) {
        return new Dimension(
                length * exponent,
                mass * exponent,
                time * exponent,
                angle * exponent,
                hardness * exponent,
                current * exponent,
                temperature * exponent);
    }
}
