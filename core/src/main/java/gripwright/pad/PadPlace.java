package gripwright.pad;

/**
 * Where a strip of chips lies: along the middle of a pad, its own middle in the pad's.
 *
 * @param on name of the finger, or {@link #PALM} (there the strip lies along the hand's x)
 * @param phalanx 0 next to the palm; without meaning on the palm
 */
public record PadPlace(String on, int phalanx) {
    public static final String PALM = "palm";

    public boolean palm() {
        return on.equals(PALM);
    }
}
