package gripwright.files;

import gripwright.math.Vec3;
import gripwright.shape.Mesh;
import gripwright.units.Measure;
import gripwright.units.Nearest;
import gripwright.units.QuantityText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Kinds of values that bring a shape from elsewhere: the catalogue, or a mesh file of the project folder. */
final class Sourced {
    /** Meshes outside these sizes are more likely in another unit than meant [m]. */
    private static final double SMALLEST = 0.0005;

    private static final double LARGEST = 5;

    private Sourced() {}

    /** An object of the catalogue by its name. */
    record FromCatalogue() implements Kind<CatalogueEntry> {
        @Override
        public @Nullable CatalogueEntry read(Tree tree, String path, Reading reading) {
            if (!(tree instanceof Tree.Text text)) {
                return refuse(tree, path, reading);
            }
            try {
                return Catalogue.find(text.value());
            } catch (IllegalArgumentException e) {
                String nearest = Nearest.to(text.value(), names()).orElse(null);
                reading.fault(tree.place(), String.valueOf(e.getMessage()), words(), nearest);
                return null;
            }
        }

        private static List<String> names() {
            return Catalogue.entries().stream().map(CatalogueEntry::name).toList();
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            Map<String, Object> schema = new LinkedHashMap<>();
            schema.put("type", "string");
            schema.put("examples", names());
            return schema;
        }

        @Override
        public String words() {
            return "the name of an object of the catalogue, such as 'cell R20 / D'";
        }
    }

    /** A file inside the project folder; nothing outside it is ever opened. */
    record FileInFolder() implements Kind<Path> {
        @Override
        public @Nullable Path read(Tree tree, String path, Reading reading) {
            if (!(tree instanceof Tree.Text text)) {
                return refuse(tree, path, reading);
            }
            try {
                Path folder = reading.folder().toRealPath();
                Path file = folder.resolve(text.value()).normalize();
                if (Path.of(text.value()).isAbsolute() || !file.startsWith(folder)) {
                    reading.fault(tree.place(), tree.words() + " is outside the project folder", words());
                    return null;
                }
                if (!Files.isRegularFile(file)) {
                    reading.fault(tree.place(), "there is no file " + tree.words() + " in the project folder", words());
                    return null;
                }
                if (!file.toRealPath().startsWith(folder)) {
                    reading.fault(tree.place(), tree.words() + " leads out of the project folder", words());
                    return null;
                }
                return file;
            } catch (IOException | InvalidPathException e) {
                reading.fault(tree.place(), tree.words() + " cannot be opened: " + e.getMessage(), words());
                return null;
            }
        }

        @Override
        public Map<String, Object> schema(Map<String, Object> definitions) {
            Map<String, Object> schema = new LinkedHashMap<>();
            schema.put("type", "string");
            schema.put("pattern", "^[^/\\\\].*\\.[sS][tT][lL]$");
            return schema;
        }

        @Override
        public String words() {
            return "an STL file in the project folder, such as bracket.stl";
        }
    }

    /** The mesh of a file, or null after noting why not. */
    static @Nullable Mesh mesh(Path file, double unit, Place place, Reading reading) {
        String expected =
                "a closed surface of one solid, as STL of at most " + StlReader.MOST_BYTES / 1_000_000 + " MB";
        try {
            Mesh mesh = Mesh.of(StlReader.read(file, unit));
            double size = Math.max(span(mesh, Vec3.X), Math.max(span(mesh, Vec3.Y), span(mesh, Vec3.Z)));
            if (size >= SMALLEST && size <= LARGEST) {
                return mesh;
            }
            reading.fault(
                    place,
                    "the mesh is " + QuantityText.number(size * 1000, 4) + " mm in its largest size",
                    QuantityText.format(SMALLEST, Measure.LENGTH) + " to "
                            + QuantityText.format(LARGEST, Measure.LENGTH) + "; is `mesh unit` right?");
        } catch (IllegalArgumentException e) {
            reading.fault(place, String.valueOf(e.getMessage()), expected);
        } catch (IOException e) {
            reading.fault(place, file.getFileName() + " cannot be read: " + e.getMessage(), expected);
        }
        return null;
    }

    private static double span(Mesh mesh, Vec3 axis) {
        return mesh.extent(axis) + mesh.extent(axis.times(-1));
    }
}
