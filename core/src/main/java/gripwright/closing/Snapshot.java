package gripwright.closing;

import gripwright.math.Memory;

/**
 * Everything a step starts from, copied: coordinates, spools, winches, the object's pose, all memories of friction and
 * the loads. A test of the hold begins from one and goes back to it afterwards, bit for bit.
 */
final class Snapshot {
    private final Memory own;
    private final Memory pads;
    private final Memory table;
    private final Memory links;
    private final Memory drive;

    private Snapshot(StepSystem s) {
        own = Memory.of(numbers(s), flags(s));
        pads = s.pads.keep();
        table = s.table.keep();
        links = s.rig.links().keep();
        drive = s.rig.drive().keep();
    }

    /** Copies the state after the last commit. */
    static Snapshot of(StepSystem system) {
        return new Snapshot(system);
    }

    void restore(StepSystem s) {
        own.into(numbers(s), flags(s));
        s.tableHeight = own.single(0);
        s.stepTime = own.single(1);
        s.viscosity = own.single(2);
        s.tableThere = own.singleFlag(0);
        s.pads.recall(pads);
        s.table.recall(table);
        s.rig.links().recall(links);
        s.rig.drive().recall(drive);
        s.updatePoses();
    }

    private static double[][] numbers(StepSystem s) {
        return new double[][] {
            {s.tableHeight}, {s.stepTime}, {s.viscosity}, s.q, s.qStart, s.p, s.pStart, s.r, s.rStart, s.object.push
        };
    }

    private static boolean[][] flags(StepSystem s) {
        return new boolean[][] {{s.tableThere}};
    }
}
