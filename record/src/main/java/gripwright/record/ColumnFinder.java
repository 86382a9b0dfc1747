package gripwright.record;

import gripwright.signal.Layout;
import java.util.List;
import java.util.Optional;

/** Finds out from the first lines of a source which columns it has. */
final class ColumnFinder {
    private final Layout layout;
    private final boolean live;

    /** @param live the first line may be the end of one */
    ColumnFinder(Layout layout, boolean live) {
        this.layout = layout;
        this.live = live;
    }

    /**
     * What a line tells.
     *
     * @param reading true if the line is a reading itself, not a line of names
     */
    record Found(Columns columns, boolean reading) {}

    /** Looks at the next line. */
    Found look(String text, long line) throws LineFault, Misfit {
        List<String> names = RowReader.names(text);
        if (!names.isEmpty()) {
            return new Found(named(names), RowReader.isJson(text));
        }
        if (layout.given()) {
            Columns inOrder = new Columns(layout.order(), layout);
            RowReader.row(text, inOrder);
            return new Found(inOrder, true);
        }
        if (live && line == 1) {
            throw new LineFault("it came before the names of the columns");
        }
        throw new Misfit("the columns are not known: pads.yaml names none, and line " + line + " of the source, '"
                + RowReader.clip(text)
                + "', is no line of names; send one first, or name the columns under `readings` in pads.yaml");
    }

    /** Columns of a source that names them. */
    Columns named(List<String> names) throws LineFault, Misfit {
        Optional<String> fault = Columns.fault(names, layout);
        if (fault.isEmpty()) {
            return new Columns(names, layout);
        }
        int wanted = layout.order().size();
        boolean cut = names.size() < wanted
                && names.subList(1, names.size()).equals(layout.order().subList(wanted - names.size() + 1, wanted));
        if (cut && live) {
            throw new LineFault("the end of a line of names");
        }
        throw new Misfit(fault.get());
    }
}
