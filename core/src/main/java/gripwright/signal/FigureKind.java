package gripwright.signal;

/**
 * What a taxel is judged by. Terms as used in IEC 61298-2, ISA 51.1, ISO 376, ISO 11843 and IEEE 952 (wording from
 * memory); the definitions here are what is computed.
 */
public enum FigureKind {
    OFFSET(
            "offset",
            Unit.READING,
            "reading at rest after a load, at the log's start, at the reference temperature and ambient pressure"),
    SENSITIVITY("sensitivity", Unit.PER_NEWTON, "slope of reading against force at small force, before any creep"),
    QUADRATIC("quadratic term", Unit.PER_SQUARE_NEWTON, "factor of the squared force"),
    TEMPERATURE("temperature coefficient", Unit.PER_KELVIN, "change of the reading at rest per kelvin"),
    AMBIENT("ambient coefficient", Unit.PER_PASCAL, "change of the reading at rest per unit of ambient pressure"),
    FULL_SCALE(
            "full-scale output",
            Unit.READING,
            "mean rise of the reading from rest to the top of the counted cycles; what the percentages refer to"),
    NONLINEARITY(
            "nonlinearity",
            Unit.SHARE,
            "independent: largest deviation of the mean of loading and unloading from the straight line that makes it"
                    + " least, between 5 and 95 % of full force"),
    HYSTERESIS(
            "hysteresis",
            Unit.SHARE,
            "largest difference of unloading and loading at equal force between 5 and 95 % of full force, mean over the"
                    + " counted cycles; creep within a cycle is part of it, so it holds for this cycle time"),
    REPEATABILITY(
            "repeatability",
            Unit.SHARE,
            "standard deviation over the counted cycles of the reading at equal force and direction, zeroed before each"
                    + " cycle, pooled over force and direction"),
    CREEP("creep", Unit.SHARE_OF_STEP, "what a constant force adds in the long run, in % of its first effect"),
    CREEP_TIME("creep time constant", Unit.SECOND, "time after which 63 % of the creep has come"),
    NOISE("noise", Unit.READING, "standard deviation of one reading at rest: of the first differences, by sqrt 2"),
    DRIFT(
            "Allan deviation at 1 s",
            Unit.READING,
            "how far the means of neighbouring seconds at rest differ, by sqrt 2 (overlapping)"),
    CRITICAL(
            "critical level",
            Unit.NEWTON,
            "force above which one reading is called a touch, at the stated rate of false alarms"),
    DETECTION(
            "detection limit",
            Unit.NEWTON,
            "force of which one reading misses no more than the stated share, at that critical level"),
    SATURATION("saturation", Unit.NEWTON, "force at which the reading stops rising");

    /** What a figure is counted in. */
    public enum Unit {
        /** The unit of the readings. */
        READING,
        PER_NEWTON,
        PER_SQUARE_NEWTON,
        PER_KELVIN,
        PER_PASCAL,
        /** Share of the full-scale output. */
        SHARE,
        SHARE_OF_STEP,
        SECOND,
        NEWTON
    }

    private final String words;
    private final Unit unit;
    private final String definition;

    FigureKind(String words, Unit unit, String definition) {
        this.words = words;
        this.unit = unit;
        this.definition = definition;
    }

    public String words() {
        return words;
    }

    public Unit unit() {
        return unit;
    }

    public String definition() {
        return definition;
    }
}
