package gripwright.study;

import gripwright.check.Check;
import gripwright.closing.Outcome;

/**
 * How sure a map is of one cell.
 *
 * @param basis what the cell's outcome rests on
 * @param held of the
 * @param decided runs behind the share: those in the cell's patch ({@link ShareMap#PATCH}), of neighbours too, and
 * @param undecided runs there that did not converge, in neither number
 * @param here those of them that were made in this cell
 * @param modelLimited true if the share changes with choices of the calculation: {@link ShareMap#MODEL_LIMITED}
 */
public record CellShare(Basis basis, int held, int decided, int undecided, Here here, boolean modelLimited) {
    /** Where a cell's outcome comes from. */
    public enum Basis {
        /** One run at nominal friction, pads and springs. */
        RUN,
        /** Several runs over the stated uncertainties. */
        ENSEMBLE,
        /** No run: the computed cells around agree on it. */
        NEIGHBOURS
    }

    /** Runs made in the cell itself: each run is in one cell's numbers only. */
    public record Here(int held, int decided, int undecided) {
        /** All runs made here. */
        public int runs() {
            return decided + undecided;
        }
    }

    public CellShare {
        Check.that(
                0 <= held && held <= decided && undecided >= 0,
                "a cell holds in " + held + " of " + decided + " decided runs, " + undecided + " undecided");
    }

    static CellShare of(Basis basis, Outcome outcome) {
        int decided = outcome.decided() && basis != Basis.NEIGHBOURS ? 1 : 0;
        int undecided = outcome.decided() || basis == Basis.NEIGHBOURS ? 0 : 1;
        int held = outcome == Outcome.HELD ? decided : 0;
        return new CellShare(basis, held, decided, undecided, new Here(held, decided, undecided), false);
    }

    /** The counts with their 95 % interval; it covers the sampled uncertainties, not the choices of the calculation. */
    public Proportion proportion() {
        return Proportion.of(held, decided, undecided);
    }

    /** True if the runs behind the share do not all end alike, held or not held. */
    public boolean mixed() {
        return decided > 0 && undecided > 0 || held > 0 && held < decided;
    }
}
