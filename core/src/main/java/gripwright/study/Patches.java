package gripwright.study;

import gripwright.closing.Conditions;
import gripwright.closing.Outcome;
import gripwright.study.CellShare.Basis;
import gripwright.study.CellShare.Here;
import gripwright.study.MapGrid.Cell;
import gripwright.study.Uncertain.Member;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The runs behind the shares of a map, by cell, counted over patches: all runs within a distance of a cell's middle, so
 * that fine cells share the runs of their neighbours. Not for several threads.
 */
final class Patches {
    private static final int FIRST_PAIRS = 4;
    private static final int PAIRS = 8;

    private final CaptureMap map;
    private final MapGrid grid;
    private final int n;
    /** Half the width of a patch over which shares are counted [m], and how many cells it is large. */
    private final double half;

    private final double size;
    /** Half the width of a patch over which repeated runs are counted [m]. */
    private final double wide;

    private final List<List<Member>> members = new ArrayList<>();
    private final boolean[] ensemble;
    /** Per cell and member whether it holds with the calculation being tried; null = not tried. */
    private final List<List<@Nullable Boolean>> others = new ArrayList<>();

    private final Set<Cell> limited = new HashSet<>();

    /** A run to repeat with another calculation. */
    record Check(Cell cell, int number, Conditions conditions) {}

    /** @param least half width of a patch [m]; half a cell if that is more */
    Patches(CaptureMap map, MapGrid grid, double least) {
        this.map = map;
        this.grid = grid;
        n = map.cells();
        half = Math.max(least, map.pitch() / 2) * (1 + 1e-9);
        wide = Math.max(2 * least, map.pitch() / 2) * (1 + 1e-9);
        size = reach(half) == 0 ? 1 : Math.pow(2 * half / map.pitch(), 2);
        ensemble = new boolean[n * n];
        for (int i = 0; i < n * n; i++) {
            members.add(new ArrayList<>());
            others.add(new ArrayList<>());
        }
    }

    private int index(Cell cell) {
        return cell.row() * n + cell.column();
    }

    /** The first run of a cell, everything at its nominal value. */
    void nominal(Cell cell, Conditions at, Outcome outcome) {
        members.get(index(cell)).add(0, new Member(at, outcome));
    }

    /** A further run of a cell; makes it an ensemble. */
    void member(Cell cell, Conditions at, Outcome outcome) {
        members.get(index(cell)).add(new Member(at, outcome));
        ensemble[index(cell)] = true;
    }

    boolean hasEnsemble(Cell cell) {
        return ensemble[index(cell)];
    }

    /** True if the runs made in the cell itself do not all end alike. */
    boolean mixedWithin(Cell cell) {
        List<Member> own = members.get(index(cell));
        return own.size() > 1 && !Uncertain.agree(own);
    }

    /** All runs in the patch of a cell, those of the cell first. */
    private List<Member> inPatch(Cell cell) {
        List<Member> all = new ArrayList<>(members.get(index(cell)));
        each(cell, half, other -> {
            if (!other.equals(cell)) {
                for (Member member : members.get(index(other))) {
                    if (near(cell, member.conditions(), half)) {
                        all.add(member);
                    }
                }
            }
        });
        return all;
    }

    /** Cells to each side that a patch may reach into. */
    private int reach(double width) {
        return (int) Math.ceil(width / map.pitch() - 0.5 - 1e-6);
    }

    private void each(Cell cell, double width, Consumer<Cell> visit) {
        int reach = reach(width);
        for (int row = Math.max(0, cell.row() - reach); row <= Math.min(n - 1, cell.row() + reach); row++) {
            for (int c = Math.max(0, cell.column() - reach); c <= Math.min(n - 1, cell.column() + reach); c++) {
                visit.accept(new Cell(row, c));
            }
        }
    }

    private boolean near(Cell cell, Conditions at, double width) {
        return Math.abs(at.x() - map.shift(cell.column())) <= width
                && Math.abs(at.y() - map.shift(cell.row())) <= width;
    }

    /**
     * Numbers of the runs to make next in a cell, none if its patch has enough by {@link Uncertain#RULE}. The patch's
     * other cells get runs in the same round, so a cell makes its part of what is lacking only.
     */
    IntStream lacking(Cell cell, boolean withoutRun) {
        List<Member> patch = inPatch(cell);
        int own = withoutRun ? 0 : members.get(index(cell)).size();
        int lack = Uncertain.wanted(patch) - patch.size();
        int least = own < 2 ? 2 - own : 0;
        int more = lack <= 0 ? least : Math.max(least, (int) Math.ceil(lack / size - 1e-9));
        return IntStream.range(own, own + more);
    }

    CellShare share(Cell cell) {
        List<Member> patch = inPatch(cell);
        List<Member> own = members.get(index(cell));
        return new CellShare(
                Basis.ENSEMBLE,
                held(patch),
                decided(patch),
                patch.size() - decided(patch),
                new Here(held(own), decided(own), own.size() - decided(own)),
                limited.contains(cell));
    }

    private static int held(List<Member> members) {
        return (int) members.stream().filter(Member::held).count();
    }

    private static int decided(List<Member> members) {
        return (int) members.stream().filter(m -> m.outcome().decided()).count();
    }

    // ------------------------------------------------------------------ model-limited cells

    /** What the repeated runs in a patch say so far. */
    private record Tried(int pairs, int changed, int net) {
        int wanted() {
            return changed == 0 ? FIRST_PAIRS : PAIRS;
        }

        boolean depends() {
            return pairs >= 2 && 2 * Math.abs(net) >= pairs;
        }
    }

    /** Runs to repeat next, so that each patch whose runs disagree gets its pairs; at most one a cell. */
    List<Check> unchecked() {
        List<Check> next = new ArrayList<>();
        Set<Cell> planned = new HashSet<>();
        for (Cell cell : grid.order()) {
            if (!wantsChecks(cell)) {
                continue;
            }
            Tried tried = tried(cell);
            int[] coming = {0};
            each(cell, wide, other -> coming[0] += planned.contains(other) ? 1 : 0);
            int number = others.get(index(cell)).size();
            if (tried.pairs + coming[0] < tried.wanted()
                    && number < members.get(index(cell)).size()) {
                planned.add(cell);
                next.add(new Check(
                        cell, number, members.get(index(cell)).get(number).conditions()));
            }
        }
        return next;
    }

    private boolean wantsChecks(Cell cell) {
        return ensemble[index(cell)] && !limited.contains(cell) && !Uncertain.agree(inPatch(cell));
    }

    void checked(Check check, boolean held) {
        List<@Nullable Boolean> of = others.get(index(check.cell));
        of.add(held);
    }

    private Tried tried(Cell cell) {
        int[] sums = new int[3];
        each(cell, wide, other -> {
            List<@Nullable Boolean> of = others.get(index(other));
            for (int i = 0; i < of.size(); i++) {
                Member before = members.get(index(other)).get(i);
                Boolean after = of.get(i);
                if (after != null && near(cell, before.conditions(), wide)) {
                    sums[0]++;
                    sums[1] += before.held() != after ? 1 : 0;
                    sums[2] += (after ? 1 : 0) - (before.held() ? 1 : 0);
                }
            }
        });
        return new Tried(sums[0], sums[1], sums[2]);
    }

    /** Marks the cells that the calculation just tried changes, and forgets it. */
    void endChecks() {
        for (Cell cell : grid.order()) {
            if (wantsChecks(cell) && tried(cell).depends()) {
                limited.add(cell);
            }
        }
        others.forEach(List::clear);
    }
}
