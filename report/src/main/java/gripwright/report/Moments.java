package gripwright.report;

import gripwright.closing.ClosingDetail;
import gripwright.closing.Frame;
import java.util.ArrayList;
import java.util.List;

/** The moments of a run worth a picture, each once, in order. */
final class Moments {
    private Moments() {}

    /**
     * @param frame index into the frames of the run
     * @param word what happens
     */
    record Moment(int frame, String word) {}

    static List<Moment> of(ClosingDetail detail) {
        List<Frame> frames = detail.frames();
        List<Moment> out = new ArrayList<>();
        int arrived = last(frames, Frame.Phase.APPROACH);
        int touch = firstTouch(detail);
        int closed = last(frames, Frame.Phase.CLOSE);
        int lifted = last(frames, Frame.Phase.LIFT);
        add(out, arrived, closed < 0 && lifted < 0 ? "came in" : "hand arrived");
        if (touch >= 0 && touch < closed) {
            add(out, touch, "first touch");
            add(out, half(frames, touch, closed), "half way");
        } else if (touch < 0 && closed > 0) {
            add(out, half(frames, Math.max(arrived, 0), closed), "half way");
        }
        add(out, closed, "closed");
        add(out, lifted, "after the lift");
        return out;
    }

    private static void add(List<Moment> out, int frame, String word) {
        if (frame >= 0 && (out.isEmpty() || out.get(out.size() - 1).frame < frame)) {
            out.add(new Moment(frame, word));
        }
    }

    private static int last(List<Frame> frames, Frame.Phase phase) {
        for (int i = frames.size() - 1; i >= 0; i--) {
            if (frames.get(i).phase() == phase) {
                return i;
            }
        }
        return -1;
    }

    private static int firstTouch(ClosingDetail detail) {
        for (int i = 0; i < detail.frames().size(); i++) {
            Frame f = detail.frames().get(i);
            boolean touched = f.bodyForce().stream()
                    .anyMatch(force -> force > detail.criteria().touchForce());
            if (f.phase() == Frame.Phase.CLOSE && touched) {
                return i;
            }
        }
        return -1;
    }

    /** Nearest to the middle between two frames' tensions, or their middle index. */
    private static int half(List<Frame> frames, int from, int to) {
        double wanted = (tension(frames.get(from)) + tension(frames.get(to))) / 2;
        int best = (from + to) / 2;
        double miss = Double.POSITIVE_INFINITY;
        for (int i = from + 1; i < to; i++) {
            double d = Math.abs(tension(frames.get(i)) - wanted);
            if (d < miss) {
                miss = d;
                best = i;
            }
        }
        return best;
    }

    /** Greatest winch tension [N]; the "time" of a closing. */
    static double tension(Frame frame) {
        return frame.tension().stream().mapToDouble(t -> t).max().orElse(0);
    }
}
