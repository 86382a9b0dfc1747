package gripwright.pad;

import gripwright.check.Check;

/**
 * A strip of equal chips under one cover of rubber.
 *
 * @param name as in the project folder
 * @param overBoard rubber over the board [m]
 * @param modulus Young's modulus of the rubber [Pa]
 * @param bulk its bulk modulus [Pa]
 * @param count chips in a row
 * @param pitch from chip to chip along the row [m]
 * @param rows side by side
 * @param rowPitch from row to row [m]
 * @param stagger how far every second row is shifted along the strip [m]
 * @param width of the strip [m]
 */
public record PadDesign(
        String name,
        Chip chip,
        double overBoard,
        double modulus,
        double bulk,
        int count,
        double pitch,
        int rows,
        double rowPitch,
        double stagger,
        double width) {
    public PadDesign {
        Check.positive(modulus, "modulus of pad " + name, "Pa");
        Check.that(count >= 1 && rows >= 1, "pad " + name + " has " + count + " chips in " + rows + " rows");
        Check.that(
                overBoard > chip.height(),
                "pad " + name + ": the chip is " + chip.height() + " m high under " + overBoard + " m of rubber");
        Check.that(
                count == 1 || pitch >= chip.sizeX(),
                "pad " + name + ": chips " + chip.sizeX() + " m long overlap at a pitch of " + pitch + " m");
        Check.that(
                rows == 1 || rowPitch >= chip.sizeY(),
                "pad " + name + ": rows of chips " + chip.sizeY() + " m wide overlap at " + rowPitch + " m");
    }

    /** Rubber over the lid [m]. */
    public double overChip() {
        return overBoard - chip.height();
    }

    public int cells() {
        return count * rows;
    }

    /** Middle of a cell along the strip, 0 in its middle; cells count row after row [m]. */
    public double along(int cell) {
        boolean second = cell / count % 2 == 1;
        double row = rows > 1 ? (second ? 0.5 : -0.5) * stagger : 0;
        return (cell % count - (count - 1) / 2.0) * pitch + row;
    }

    /** Middle of a cell across the strip [m]. */
    public double across(int cell) {
        return (cell / count - (rows - 1) / 2.0) * rowPitch;
    }

    public PadDesign named(String other) {
        return new PadDesign(other, chip, overBoard, modulus, bulk, count, pitch, rows, rowPitch, stagger, width);
    }

    public PadDesign withOverBoard(double thickness) {
        return new PadDesign(name, chip, thickness, modulus, bulk, count, pitch, rows, rowPitch, stagger, width);
    }
}
