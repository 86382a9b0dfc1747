package gripwright.pad;

/** Two chips for checks: outer sizes as of common parts; port, lid and cavity are assumptions. */
final class Chips {
    /** 5 x 3 x 1.2 mm, coarse. */
    static final Chip WIDE =
            new Chip("wide", 5e-3, 3e-3, 1.2e-3, 0.5e-3, 0.2e-3, 1.2e-3, 0.5e-3, 150, 50e3, 115e3, 1.6e-3, 29, 66);
    /** 2.5 x 2 x 0.95 mm, fine. */
    static final Chip SMALL =
            new Chip("small", 2.5e-3, 2e-3, 0.95e-3, 0.25e-3, 0.12e-3, 0.8e-3, 0.3e-3, 3, 30e3, 110e3, 0.6e-3, 20, 58);

    private Chips() {}
}
