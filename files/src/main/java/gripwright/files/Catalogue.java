package gripwright.files;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import gripwright.files.CatalogueEntry.Mark;
import gripwright.shape.Box;
import gripwright.shape.Cylinder;
import gripwright.shape.Ellipsoid;
import gripwright.shape.Shape;
import gripwright.shape.Sphere;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;

/**
 * Everyday objects that a need may refer to by name: balls, cells, cans, coins, pipes. Every entry names its source.
 * Cylinders, cups and ellipsoids stand along z; boxes have their three sizes along x, y, z in the order of the source.
 */
public final class Catalogue {
    /** Rigid PVC; typical value, from memory [kg/m^3]. */
    private static final double PVC_DENSITY = 1400;

    /** Length of the pipe samples [m]. */
    private static final double PIPE_LENGTH = 0.1;

    /** Rounding given to edges, which the sources do not state; less on thin things [m]. */
    private static final double EDGE = 0.0005;

    private static final double MM = 1e-3;

    private Catalogue() {}

    private static final class Loaded {
        static final Map<String, CatalogueEntry> BY_NAME = load();
    }

    /** All entries in the order of the sources. */
    public static List<CatalogueEntry> entries() {
        return List.copyOf(Loaded.BY_NAME.values());
    }

    /**
     * The entry of a name; capitals and runs of blanks do not matter, and a remark in brackets may be left out where
     * that leaves one entry only.
     *
     * @throws IllegalArgumentException if there is no such entry, or more than one, with the nearest names
     */
    public static CatalogueEntry find(String name) {
        String asked = plain(name);
        CatalogueEntry exact = Loaded.BY_NAME.get(asked);
        if (exact != null) {
            return exact;
        }
        List<CatalogueEntry> bare =
                entries().stream().filter(e -> bare(e.name()).equals(asked)).toList();
        if (bare.size() == 1) {
            return bare.get(0);
        }
        if (bare.size() > 1) {
            throw new IllegalArgumentException(
                    "the catalogue has " + bare.size() + " objects '" + name + "': give one of " + quoted(bare));
        }
        List<CatalogueEntry> near = entries().stream()
                .sorted(Comparator.comparingInt(
                        e -> Math.min(apart(plain(e.name()), asked), apart(bare(e.name()), asked))))
                .limit(3)
                .toList();
        throw new IllegalArgumentException(
                "the catalogue has no object '" + name + "'; the nearest names are " + quoted(near));
    }

    private static String quoted(List<CatalogueEntry> entries) {
        return "'"
                + String.join("', '", entries.stream().map(CatalogueEntry::name).toList()) + "'";
    }

    private static String plain(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    }

    private static String bare(String name) {
        return plain(name.replaceAll("\\(.*", ""));
    }

    /** Least number of letters to insert, delete or replace, less one for each word in common. */
    private static int apart(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int corner = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int replaced = corner + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                corner = row[j];
                row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        int common = 0;
        for (String word : List.of(b.split(" ", -1))) {
            common += word.length() > 1 && List.of(a.split(" ", -1)).contains(word) ? word.length() : 0;
        }
        return row[b.length()] - common;
    }

    private static Map<String, CatalogueEntry> load() {
        List<CatalogueEntry> all = new ArrayList<>();
        read("objects.csv", r -> all.add(object(r)));
        read("pvc_pipe.csv", r -> all.add(pipe(r)));
        Map<String, CatalogueEntry> byName = new LinkedHashMap<>();
        for (CatalogueEntry entry : all) {
            if (byName.put(plain(entry.name()), entry) != null) {
                throw new IllegalStateException("the catalogue has two objects '" + entry.name() + "'");
            }
        }
        return byName;
    }

    private static void read(String resource, Consumer<NamedCsvRecord> row) {
        try (InputStream in = Catalogue.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its file " + resource + ": build it again");
            }
            CsvReader.builder()
                    .commentStrategy(CommentStrategy.SKIP)
                    .ofNamedCsvRecord(in)
                    .forEach(r -> {
                        try {
                            row.accept(r);
                        } catch (IllegalArgumentException e) {
                            throw new IllegalStateException(
                                    resource + ", line " + r.getStartingLineNumber() + ": " + e.getMessage(), e);
                        }
                    });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static CatalogueEntry object(NamedCsvRecord r) {
        double a = number(r, "size1_mm") * MM;
        String kind = r.getField("shape");
        double edge = 0;
        Shape shape;
        switch (kind) {
            case "sphere" -> shape = new Sphere(a / 2);
            case "ellipsoid" -> shape = new Ellipsoid(a / 2, a / 2, height(r) / 2);
            case "cylinder", "cylinder/disc" -> {
                edge = Math.min(EDGE, Math.min(a, height(r)) / 10);
                shape = new Cylinder(a / 2, height(r) / 2, edge);
            }
            case "box", "sheet" -> {
                double b = number(r, "size2_mm") * MM;
                edge = Math.min(EDGE, Math.min(a, Math.min(b, height(r))) / 10);
                shape = new Box(a / 2, b / 2, height(r) / 2, edge);
            }
            default -> throw new IllegalArgumentException("unknown shape '" + kind + "'");
        }
        String status = r.getField("status");
        boolean split = status.contains("(size)");
        String name = r.getField("name");
        return new CatalogueEntry(
                name,
                shape,
                number(r, "mass_g") * 1e-3,
                r.getField("source"),
                mark(split ? status.substring(0, status.indexOf(" (size)")) : status),
                mark(split ? status.substring(status.indexOf("/ ") + 2, status.indexOf(" (mass)")) : status),
                assumption(edge, name));
    }

    private static String assumption(double edge, String name) {
        String rounding = edge > 0 ? "edges rounded by " + Math.round(edge * 1e6) / 1e3 + " mm" : "";
        return name.contains("pencil") ? "round instead of hexagonal, " + rounding : rounding;
    }

    /** A short piece of pipe, as a solid cylinder of its outside diameter with the mass of the pipe. */
    private static CatalogueEntry pipe(NamedCsvRecord r) {
        double outside = number(r, "outside_diameter_mm") * MM;
        double wall = number(r, "min_wall_mm") * MM;
        double mass = Math.PI * wall * (outside - wall) * PIPE_LENGTH * PVC_DENSITY;
        return new CatalogueEntry(
                "PVC pipe " + r.getField("nominal_inch") + " inch",
                new Cylinder(outside / 2, PIPE_LENGTH / 2, EDGE),
                mass,
                "ASTM D1785, PVC pipe schedule 40: outside diameter and least wall from listings of the standard",
                mark(r.getField("status").replaceAll(" .*", "")),
                Mark.COMPUTED,
                "a piece " + Math.round(PIPE_LENGTH * 1e3) + " mm long, ends closed, mass from the least wall and "
                        + Math.round(PVC_DENSITY) + " kg/m3 (typical, from memory), edges rounded by "
                        + EDGE * 1e3 + " mm");
    }

    private static Mark mark(String status) {
        return switch (status) {
            case "seen" -> Mark.SEEN;
            case "computed" -> Mark.COMPUTED;
            case "memory" -> Mark.MEMORY;
            default -> throw new IllegalArgumentException("unknown status '" + status + "'");
        };
    }

    private static double height(NamedCsvRecord r) {
        return number(r, "height_or_thickness_mm") * MM;
    }

    private static double number(NamedCsvRecord r, String column) {
        String text = r.getField(column);
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(column + " is '" + text + "', not a number", e);
        }
    }
}
