package gripwright.pad;

import gripwright.check.Check;

/**
 * A pad whose port holds air: the rubber over it bulges and presses the air on the die.
 *
 * @param compliance bulge per pressure difference [m^3/Pa]
 */
public record Membrane(double compliance, Bulge bulge) {
    /** Volume pressed into the port by one newton at an offset [m^3/N], were the air's pressure held. */
    public interface Bulge {
        double at(double offset);
    }

    /**
     * Die pressure per newton at an offset [Pa/N], air compressed slowly (isothermal).
     *
     * @param air its volume [m^3]
     * @param ambient absolute pressure [Pa]
     */
    public double at(double offset, double air, double ambient) {
        Check.positive(air, "air volume", "m^3");
        double stiff = ambient / air;
        return stiff * bulge.at(offset) / (1 + stiff * compliance);
    }
}
