package gripwright.model;

import java.util.List;

/** A leaf of the transmission: the tendon of one finger, fixed at its last phalanx. */
public record FingerTendon(String finger) implements Transmission {
    @Override
    public List<String> fingers() {
        return List.of(finger);
    }
}
