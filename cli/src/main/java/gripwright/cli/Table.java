package gripwright.cli;

import gripwright.check.Check;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A small table in plain text: left-aligned first column, the others as asked, two blanks between columns. */
final class Table {
    private final List<String> heads;
    private final String alignment;
    private final List<List<String>> rows = new ArrayList<>();

    /** @param alignment one letter a column: l or r */
    Table(String alignment, String... heads) {
        Check.count(alignment.length(), heads.length, "alignment", "one letter a column");
        this.alignment = alignment;
        this.heads = List.of(heads);
    }

    Table row(String... cells) {
        Check.count(cells.length, heads.size(), "row", "one cell a column");
        rows.add(List.of(cells));
        return this;
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    /** Lines without a line feed at the end of the last. */
    @Override
    public String toString() {
        List<List<String>> all = new ArrayList<>();
        all.add(heads);
        all.addAll(rows);
        int[] width = new int[heads.size()];
        for (List<String> row : all) {
            for (int i = 0; i < width.length; i++) {
                width[i] = Math.max(width[i], length(row.get(i)));
            }
        }
        return all.stream().map(row -> line(row, width)).collect(Collectors.joining("\n"));
    }

    private String line(List<String> row, int[] width) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < width.length; i++) {
            String cell = row.get(i);
            String fill = " ".repeat(width[i] - length(cell));
            line.append(i == 0 ? "" : "  ").append(alignment.charAt(i) == 'r' ? fill + cell : cell + fill);
        }
        return line.toString().stripTrailing();
    }

    private static int length(String cell) {
        return cell.codePointCount(0, cell.length());
    }
}
