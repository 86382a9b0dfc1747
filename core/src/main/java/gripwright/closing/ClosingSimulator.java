package gripwright.closing;

import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Spread;

/** Closes one hand with one grip on one object. Not shared between threads; runs leave nothing behind. */
public final class ClosingSimulator implements ClosingRunner {
    /**
     * @param tableFriction coefficient of the object on the table [-]
     * @throws IllegalArgumentException if the grip names a finger that the hand does not have
     */
    public ClosingSimulator(
            Hand hand, Grip grip, GraspObject object, Spread tableFriction, Numerics numerics, Criteria criteria) {
        throw new UnsupportedOperationException("being written");
    }

    @Override
    public ClosingSummary run(Conditions conditions) {
        throw new UnsupportedOperationException("being written");
    }

    @Override
    public ClosingDetail detail(Conditions conditions) {
        throw new UnsupportedOperationException("being written");
    }
}
