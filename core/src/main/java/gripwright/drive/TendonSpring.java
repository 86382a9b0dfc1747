package gripwright.drive;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One elastic stretch of tendon between what pulls it, a winch or the drum of a spool, and what it pulls, fingers and
 * further spools shared by floating differentials.
 *
 * <p>stretch = pulled length - sum of ratio times travel. With v = d stretch / d unknown, a tension T adds -T v to the
 * gradient's opposite and a stiffness k adds k w v^T, w being v with friction's share L of the force at each joint; its
 * part even in rows and columns goes to the second derivative, the rest to the skew. Workspace.
 */
final class TendonSpring {
    /** Index of the motor at its winch, -1 if a spool pulls. */
    final int motor;

    final double stiffness;
    /** Greatest tension [N]. */
    final double cap;

    private final int drum;
    private final double drumRatio;
    private final int[] loadSpool;
    private final double[] loadSpoolRatio;
    private final TendonRoute[] loadRoute;
    private final double[] loadRatio;

    private final int firstSpool;
    /** The unknowns that change the stretch, and by how much each does: the drum, the loaded spools, the fingers' joints. */
    private final int[] unknown;

    private final double[] slope;
    /** What friction leaves of the force on each of them [-]. */
    private final double[] share;

    /** @param firstSpool index of the first spool among the unknowns */
    TendonSpring(TendonNet.Spring spring, TendonRoute[] routes, int firstSpool) {
        motor = spring.motor();
        stiffness = spring.stiffness();
        cap = spring.cap();
        drum = spring.spool();
        drumRatio = spring.ratio();
        this.firstSpool = firstSpool;
        List<TendonNet.Load> onSpools =
                spring.loads().stream().filter(l -> l.finger() < 0).toList();
        List<TendonNet.Load> onFingers =
                spring.loads().stream().filter(l -> l.finger() >= 0).toList();
        loadSpool = onSpools.stream().mapToInt(TendonNet.Load::spool).toArray();
        loadSpoolRatio = onSpools.stream().mapToDouble(TendonNet.Load::ratio).toArray();
        loadRoute = onFingers.stream().map(l -> routes[l.finger()]).toArray(TendonRoute[]::new);
        loadRatio = onFingers.stream().mapToDouble(TendonNet.Load::ratio).toArray();

        List<Integer> unknowns = new ArrayList<>();
        List<Double> slopes = new ArrayList<>();
        if (motor < 0) {
            unknowns.add(firstSpool + drum);
            slopes.add(drumRatio);
        }
        for (int k = 0; k < loadSpool.length; k++) {
            unknowns.add(firstSpool + loadSpool[k]);
            slopes.add(-loadSpoolRatio[k]);
        }
        for (int n = 0; n < loadRoute.length; n++) {
            for (int j = 0; j < loadRoute[n].arm.length; j++) {
                unknowns.add(loadRoute[n].coordinate[j]);
                slopes.add(-loadRatio[n] * loadRoute[n].arm[j]);
            }
        }
        unknown = unknowns.stream().mapToInt(Integer::intValue).toArray();
        slope = slopes.stream().mapToDouble(Double::doubleValue).toArray();
        share = new double[unknown.length];
        Arrays.fill(share, 1);
    }

    /** True if it pulls on anything that takes part. */
    boolean loaded() {
        return loadRoute.length + loadSpool.length > 0;
    }

    /** Length that its loads have drawn in [m]. */
    double travel(double[] spool) {
        double sum = 0;
        for (int n = 0; n < loadRoute.length; n++) {
            sum += loadRatio[n] * loadRoute[n].travel();
        }
        for (int k = 0; k < loadSpool.length; k++) {
            sum += loadSpoolRatio[k] * spool[loadSpool[k]];
        }
        return sum;
    }

    /** @param wound lengths that the motors have wound in [m] */
    double stretch(double[] wound, double[] spool) {
        double pulled = motor >= 0 ? wound[motor] : drumRatio * spool[drum];
        return pulled - travel(spool);
    }

    /** Hands its tension [N] on to the fingers' tendons. */
    void pull(double tension) {
        for (int n = 0; n < loadRoute.length; n++) {
            loadRoute[n].pull(loadRatio[n] * tension);
        }
    }

    void addForces(double tension, double[] gradient) {
        if (motor < 0) {
            gradient[firstSpool + drum] += drumRatio * tension;
        }
        for (int k = 0; k < loadSpool.length; k++) {
            gradient[firstSpool + loadSpool[k]] -= loadSpoolRatio[k] * tension;
        }
        for (TendonRoute route : loadRoute) {
            route.addForces(gradient);
        }
    }

    /** @param k present stiffness [N/m], 0 where the motor stalls */
    void addStiffness(double k, double[] hessian, double[] skew, int stride) {
        if (k != 0) {
            takeShares();
            for (int a = 0; a < unknown.length; a++) {
                int row = unknown[a] * stride;
                for (int b = 0; b < unknown.length; b++) {
                    double v = k * slope[a] * slope[b];
                    double even = v * Math.sqrt(share[a] * share[b]);
                    hessian[row + unknown[b]] += even;
                    skew[row + unknown[b]] += v * share[a] - even;
                }
            }
        }
        for (TendonRoute route : loadRoute) {
            if (route.hasFriction()) {
                route.addStiffness(hessian, skew, stride);
            }
        }
    }

    private void takeShares() {
        int a = unknown.length;
        for (int n = loadRoute.length - 1; n >= 0; n--) {
            for (int j = loadRoute[n].arm.length - 1; j >= 0; j--) {
                share[--a] = loadRoute[n].left(j);
            }
        }
    }
}
