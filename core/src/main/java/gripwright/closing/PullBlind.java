package gripwright.closing;

/** All motors wind until they stall, whatever the chips say. */
final class PullBlind extends Policy {
    @Override
    public String word() {
        return "blind";
    }

    @Override
    public String says() {
        return "all motors wind until they stall";
    }

    @Override
    public boolean feels() {
        return false;
    }

    @Override
    Stepper.End beforeTightening(TouchRun run) {
        return Stepper.End.DONE;
    }
}
