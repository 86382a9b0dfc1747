package gripwright.closing;

/** A run with what its chips said. */
public record SensedDetail(ClosingDetail closing, ChipReadings readings) {}
