package gripwright.bench;

import gripwright.closing.PadPoint;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The pad points of a hand gathered into few cells per pad, so that a frame stays small on its way to the browser. */
final class Taxels {
    private static final int ALONG = 7;
    private static final int ACROSS = 3;

    private final List<PadPoint> points;
    private final List<int[]> members = new ArrayList<>();

    Taxels(List<PadPoint> points) {
        this.points = points;
        Map<Integer, List<Integer>> byBody = new TreeMap<>();
        for (int i = 0; i < points.size(); i++) {
            byBody.computeIfAbsent(points.get(i).body(), k -> new ArrayList<>()).add(i);
        }
        byBody.forEach(this::gather);
    }

    /** Bins by the order along the pad (with the arc of a round tip) and by the place across. */
    private void gather(int body, List<Integer> of) {
        double[] along = of.stream().mapToDouble(i -> along(points.get(i))).toArray();
        double[] across = of.stream().mapToDouble(i -> across(points.get(i))).toArray();
        Map<Integer, List<Integer>> cells = new TreeMap<>();
        for (int k = 0; k < of.size(); k++) {
            int cell = bin(along, k, ALONG) * ACROSS + bin(across, k, ACROSS);
            cells.computeIfAbsent(cell, c -> new ArrayList<>()).add(of.get(k));
        }
        cells.values()
                .forEach(list -> members.add(list.stream().mapToInt(i -> i).toArray()));
    }

    /** By rank among the places that differ, so that every cell has its points however the pad's rows are spaced. */
    private static int bin(double[] values, int k, int bins) {
        double[] levels = Arrays.stream(values)
                .map(v -> Math.rint(v * 1e6))
                .sorted()
                .distinct()
                .toArray();
        int rank = Math.max(0, Arrays.binarySearch(levels, Math.rint(values[k] * 1e6)));
        return Math.min(bins - 1, rank * bins / levels.length);
    }

    /** Along the pad; round a tip the height sinks while the way goes on. */
    private static double along(PadPoint p) {
        return p.body() == 0
                ? p.place().x()
                : p.place().x() + 0.03 * Math.max(0, p.normal().x());
    }

    private static double across(PadPoint p) {
        return p.body() == 0 ? p.place().y() : p.place().z();
    }

    /** Body, place [mm], normal and area [mm2] of each cell. */
    List<List<Wire.Raw>> wire() {
        List<List<Wire.Raw>> out = new ArrayList<>();
        for (int[] cell : members) {
            Vec3 place = Vec3.ZERO;
            Vec3 normal = Vec3.ZERO;
            double area = 0;
            for (int i : cell) {
                place = place.plus(points.get(i).place().times(1.0 / cell.length));
                normal = normal.plus(points.get(i).normal());
                area += points.get(i).area();
            }
            List<Wire.Raw> one = new ArrayList<>();
            one.add(Wire.number(points.get(cell[0]).body(), 0));
            one.addAll(Wire.millimetres(place));
            one.addAll(Wire.vector(normal.length() > 1e-9 ? normal.unit() : normal, 3));
            one.add(Wire.number(1e6 * area, 1));
            out.add(one);
        }
        return out;
    }

    /** Mean pressure of the pressed cells of a frame: cell, kPa, cell, kPa, ... */
    List<Wire.Raw> pressures(float[] padPressure) {
        List<Wire.Raw> out = new ArrayList<>();
        for (int c = 0; c < members.size(); c++) {
            double force = 0;
            double area = 0;
            for (int i : members.get(c)) {
                force += padPressure[i] * points.get(i).area();
                area += points.get(i).area();
            }
            double kilopascals = area > 0 ? force / area / 1e3 : 0;
            if (kilopascals >= 0.05) {
                out.add(Wire.number(c, 0));
                out.add(Wire.number(kilopascals, 1));
            }
        }
        return out;
    }
}
