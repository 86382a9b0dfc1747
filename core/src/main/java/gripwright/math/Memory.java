package gripwright.math;

import gripwright.check.Check;

/**
 * A copy of work arrays, so that a state can be gone back to as often as wanted. The same arrays in the same order must
 * be handed in both times.
 */
public final class Memory {
    private final double[][] numbers;
    private final boolean[][] flags;

    private Memory(double[][] numbers, boolean[][] flags) {
        this.numbers = numbers;
        this.flags = flags;
    }

    /** Copies the arrays' present contents. */
    public static Memory of(double[][] numbers, boolean[][] flags) {
        double[][] n = new double[numbers.length][];
        for (int i = 0; i < n.length; i++) {
            n[i] = numbers[i].clone();
        }
        boolean[][] f = new boolean[flags.length][];
        for (int i = 0; i < f.length; i++) {
            f[i] = flags[i].clone();
        }
        return new Memory(n, f);
    }

    /** Copies back. @throws IllegalArgumentException if the arrays are not those that were copied */
    public void into(double[][] live, boolean[][] liveFlags) {
        Check.count(live.length, numbers.length, "arrays of numbers", "as many as were copied");
        Check.count(liveFlags.length, flags.length, "arrays of flags", "as many as were copied");
        for (int i = 0; i < numbers.length; i++) {
            System.arraycopy(numbers[i], 0, live[i], 0, numbers[i].length);
        }
        for (int i = 0; i < flags.length; i++) {
            System.arraycopy(flags[i], 0, liveFlags[i], 0, flags[i].length);
        }
    }

    /** First number of an array, for single values kept in an array of one. */
    public double single(int array) {
        return numbers[array][0];
    }

    /** First flag of an array. */
    public boolean singleFlag(int array) {
        return flags[array][0];
    }
}
