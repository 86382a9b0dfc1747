package gripwright.bench;

import gripwright.model.Finger;
import gripwright.model.Hand;
import gripwright.model.Phalanx;
import gripwright.pad.PadDesign;
import gripwright.pad.PadPlace;
import gripwright.pad.PadSetup;
import gripwright.signal.Layout;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where taxels are drawn: a line for each finger that has some, from the palm to the tip, one for the palm, and one for
 * each pad of which no place is known.
 */
final class NowPlaces {
    private static final int ALONG = 25;
    private static final double MM = 1e3;

    private final Map<String, Line> lines = new LinkedHashMap<>();

    /** A finger, the palm, or a pad by itself; lengths in mm. */
    private static final class Line {
        final List<Object> bodies = new ArrayList<>();
        final List<Wire.Raw> cells = new ArrayList<>();
    }

    private NowPlaces() {}

    /** Lines with the bodies they show and the cells on them: index of the taxel, place along, row, pitch. */
    static List<Wire.Raw> of(List<Layout.Taxel> taxels, Optional<PadSetup> setup, @Nullable Hand hand) {
        NowPlaces places = new NowPlaces();
        Map<String, List<Integer>> byPad = new LinkedHashMap<>();
        for (int i = 0; i < taxels.size(); i++) {
            byPad.computeIfAbsent(taxels.get(i).pad(), k -> new ArrayList<>()).add(i);
        }
        byPad.forEach((name, cells) -> places.pad(name, cells, taxels, setup, hand));
        return places.lines.entrySet().stream()
                .map(e -> Wire.raw("name", e.getKey(), "bodies", e.getValue().bodies, "cells", e.getValue().cells))
                .toList();
    }

    private void pad(
            String name,
            List<Integer> cells,
            List<Layout.Taxel> taxels,
            Optional<PadSetup> setup,
            @Nullable Hand hand) {
        int at = setup.map(s -> s.pads().stream().map(PadDesign::name).toList().indexOf(name))
                .orElse(-1);
        if (at < 0 || setup.isEmpty()) {
            unplaced(name, cells, taxels);
            return;
        }
        PadDesign design = setup.get().pads().get(at);
        List<PadPlace> known = setup.get().places();
        double middle = 0;
        Line line = null;
        if (!known.isEmpty() && hand != null) {
            PadPlace place = known.get(at);
            line = lines.computeIfAbsent(place.palm() ? PadPlace.PALM : place.on(), k -> body(k, hand));
            middle = middle(place, hand) + place.shift();
        }
        if (line == null) {
            line = lines.computeIfAbsent(name, k -> new Line());
        }
        for (int i = 0; i < cells.size(); i++) {
            int row = i / design.count();
            line.cells.add(cell(cells.get(i), MM * (middle + design.along(i)), row, MM * design.pitch()));
        }
    }

    private void unplaced(String name, List<Integer> cells, List<Layout.Taxel> taxels) {
        for (int from = 0; from < cells.size(); from += ALONG) {
            int to = Math.min(cells.size(), from + ALONG);
            Line line = new Line();
            for (int i = from; i < to; i++) {
                line.cells.add(cell(cells.get(i), 6.0 * (i - from), 0, 6));
            }
            String first = taxels.get(cells.get(from)).column();
            String last = taxels.get(cells.get(to - 1)).column();
            lines.put((name.isEmpty() ? "" : name + ", ") + first + " to " + last, line);
        }
    }

    private static Wire.Raw cell(int index, double along, int row, double pitch) {
        return Wire.raw("i", index, "x", Wire.number(along, 2), "row", row, "pitch", Wire.number(pitch, 2));
    }

    /** The bodies of a finger one after the other, or the palm. */
    private static Line body(String on, Hand hand) {
        Line line = new Line();
        if (on.equals(PadPlace.PALM)) {
            line.bodies.add(
                    List.of(Wire.number(0, 0), Wire.number(MM * hand.palm().sizeX(), 1)));
            return line;
        }
        double from = 0;
        for (Phalanx phalanx : phalanges(on, hand)) {
            line.bodies.add(List.of(Wire.number(MM * from, 1), Wire.number(MM * (from + phalanx.length()), 1)));
            from += phalanx.length();
        }
        return line;
    }

    private static double middle(PadPlace place, Hand hand) {
        if (place.palm()) {
            return hand.palm().sizeX() / 2;
        }
        List<Phalanx> phalanges = phalanges(place.on(), hand);
        double from = 0;
        for (int i = 0; i < Math.min(place.phalanx(), phalanges.size()); i++) {
            from += phalanges.get(i).length();
        }
        return from
                + (place.phalanx() < phalanges.size()
                        ? phalanges.get(place.phalanx()).length() / 2
                        : 0);
    }

    private static List<Phalanx> phalanges(String on, Hand hand) {
        return hand.fingers().stream()
                .filter(f -> f.name().equals(on))
                .findFirst()
                .map(Finger::phalanges)
                .orElse(List.of());
    }
}
