package gripwright.pad;

/**
 * Where a strip of chips lies: along the middle of a pad.
 *
 * @param on name of the finger, or {@link #PALM} (there the strip lies along the hand's x)
 * @param phalanx 0 next to the palm; without meaning on the palm
 * @param shift of the strip's middle from the phalanx's, towards the tip (on the palm along x); round a round tip along
 *     the rubber's surface [m]
 */
public record PadPlace(String on, int phalanx, double shift) {
    public static final String PALM = "palm";

    /** In the middle. */
    public PadPlace(String on, int phalanx) {
        this(on, phalanx, 0);
    }

    public boolean palm() {
        return on.equals(PALM);
    }
}
