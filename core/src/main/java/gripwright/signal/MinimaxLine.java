package gripwright.signal;

import gripwright.check.Check;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.optim.PointValuePair;
import org.hipparchus.optim.linear.LinearConstraint;
import org.hipparchus.optim.linear.LinearConstraintSet;
import org.hipparchus.optim.linear.LinearObjectiveFunction;
import org.hipparchus.optim.linear.NonNegativeConstraint;
import org.hipparchus.optim.linear.Relationship;
import org.hipparchus.optim.linear.SimplexSolver;
import org.hipparchus.optim.nonlinear.scalar.GoalType;

/**
 * The straight line whose largest deviation is least, by linear programming.
 *
 * @param at0 its value at 0
 * @param slope of it
 * @param deviation the largest distance of a point, in the unit of y
 */
record MinimaxLine(double at0, double slope, double deviation) {
    /**
     * @param x shape n, at least two different
     * @param y shape n
     */
    static MinimaxLine of(double[] x, double[] y) {
        Check.count(y.length, x.length, "y", "one value per x");
        double middle = mean(x);
        double level = mean(y);
        double wide = spread(x, middle);
        double high = Math.max(spread(y, level), Double.MIN_NORMAL);
        Check.that(wide > 0, "a straight line needs two different places");
        List<LinearConstraint> constraints = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            double u = (x[i] - middle) / wide;
            double v = (y[i] - level) / high;
            constraints.add(new LinearConstraint(new double[] {1, u, -1}, Relationship.LEQ, v));
            constraints.add(new LinearConstraint(new double[] {1, u, 1}, Relationship.GEQ, v));
        }
        PointValuePair best = new SimplexSolver()
                .optimize(
                        new LinearObjectiveFunction(new double[] {0, 0, 1}, 0),
                        new LinearConstraintSet(constraints),
                        GoalType.MINIMIZE,
                        new NonNegativeConstraint(false));
        double[] line = best.getPoint();
        double slope = line[1] * high / wide;
        return new MinimaxLine(level + line[0] * high - slope * middle, slope, line[2] * high);
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double v : values) {
            sum += v;
        }
        return sum / values.length;
    }

    private static double spread(double[] values, double middle) {
        double most = 0;
        for (double v : values) {
            most = Math.max(most, Math.abs(v - middle));
        }
        return most;
    }
}
