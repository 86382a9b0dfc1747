package gripwright.closing;

import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.model.Motor;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Each motor stops when a finger of its own feels something, and waits for the others; then all tighten. */
final class StopOnTouch extends Policy {
    @Override
    public String word() {
        return "touch";
    }

    @Override
    public String says() {
        return "each motor stops when a finger of its own feels something, and waits for the others; then all tighten";
    }

    @Override
    public boolean feels() {
        return true;
    }

    @Override
    public Optional<String> refusal(Hand hand, Grip grip, Sensing sensing) {
        List<Motor> pulling = hand.motors().stream()
                .filter(m -> m.pulls().fingers().stream().anyMatch(grip.fingers()::contains))
                .toList();
        if (pulling.size() < 2) {
            return Optional.of("grip '" + grip.name() + "' has one motor for all its fingers: no finger can wait for"
                    + " another, so 'touch' would be 'blind'; give fingers motors of their own (`drive` in hand.yaml), or"
                    + " use 'centre'");
        }
        List<String> numb = new ArrayList<>();
        for (Motor motor : pulling) {
            boolean feels = sensing.strips().stream()
                    .anyMatch(s -> motor.pulls().fingers().contains(s.place().on())
                            && grip.fingers().contains(s.place().on()));
            if (!feels) {
                numb.add(motor.name());
            }
        }
        return numb.isEmpty()
                ? Optional.empty()
                : Optional.of("no finger of motor " + String.join(", ", numb) + " has a sensing pad: it would not know"
                        + " when to stop; give one of its fingers a pad in pads.yaml");
    }

    @Override
    Stepper.End beforeTightening(TouchRun run) {
        return run.windEachUntilFelt();
    }
}
