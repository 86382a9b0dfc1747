package gripwright.study;

import gripwright.check.Check;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The cells of a capture map, in the order in which they are computed: coarse to fine (every 16th cell from the middle,
 * every 8th, and so on), inside out within a level, mirror images next to each other. Cut off after any level, or after
 * any group of mirror images, the cells done are symmetric about both axes and the diagonals.
 *
 * @param cells per side, odd, 3 or more
 */
public record MapGrid(int cells) {
    private static final int COARSEST = 16;
    private static final int MOST = 1001;

    public MapGrid {
        Check.that(
                cells >= 3 && cells <= MOST && cells % 2 == 1,
                "cells is " + cells + "; it must be an odd number from 3 to " + MOST
                        + ", so that one cell is the nominal place" + nearest(cells));
    }

    /** One cell, by its place in the grid. */
    public record Cell(int row, int column) {}

    /** Steps from the middle to the edge. */
    public int middle() {
        return cells / 2;
    }

    /** All cells in the order of computing. */
    public List<Cell> order() {
        List<Cell> all = new ArrayList<>();
        for (int row = 0; row < cells; row++) {
            for (int column = 0; column < cells; column++) {
                all.add(new Cell(row, column));
            }
        }
        all.sort(Comparator.comparingInt((Cell c) -> -stride(c))
                .thenComparingInt(this::squaredSteps)
                .thenComparingInt(this::longerSide)
                .thenComparingInt(Cell::row)
                .thenComparingInt(Cell::column));
        return all;
    }

    /** Squared distance of a cell from the middle, in steps; whole numbers, so mirror images agree exactly. */
    public int squaredSteps(Cell cell) {
        int x = cell.column - middle();
        int y = cell.row - middle();
        return x * x + y * y;
    }

    /** True for cells no farther from the middle than the edge; the corners of the square are not. */
    public boolean insideCircle(Cell cell) {
        return squaredSteps(cell) <= middle() * middle();
    }

    /** Coarsest stride from the middle that meets this cell. */
    int stride(Cell cell) {
        int x = Math.abs(cell.column - middle());
        int y = Math.abs(cell.row - middle());
        int stride = COARSEST;
        while (x % stride != 0 || y % stride != 0) {
            stride /= 2;
        }
        return stride;
    }

    // Tells 5, 0 from 4, 3, which lie equally far from the middle but are no mirror images.
    private int longerSide(Cell cell) {
        return Math.max(Math.abs(cell.column - middle()), Math.abs(cell.row - middle()));
    }

    private static String nearest(int cells) {
        return cells >= 3 && cells < MOST ? "; " + (cells - 1) + " and " + (cells + 1) + " are" : "";
    }
}
