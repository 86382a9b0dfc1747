package gripwright.study;

import gripwright.closing.Conditions;
import gripwright.math.Draws;
import gripwright.math.Streams;
import gripwright.model.Placement;
import gripwright.model.Scatter;

/** Draws the conditions of a run; they depend on the object and the sample, not on the grip or the hand. */
record Sampler(Placement placement, Variation variation, Streams streams) {
    Conditions conditions(String object, int sample) {
        Draws draws = streams.draws(object, sample);
        return new Conditions(
                scattered(placement.x(), SampledInput.X, draws),
                scattered(placement.y(), SampledInput.Y, draws),
                scattered(placement.turn(), SampledInput.TURN, draws),
                scattered(placement.height(), SampledInput.HEIGHT, draws),
                draws.normal(SampledInput.PAD_FRICTION.words()),
                draws.normal(SampledInput.TABLE_FRICTION.words()),
                draws.normal(SampledInput.MASS.words()),
                factor(variation.padStiffness(), SampledInput.PAD_STIFFNESS, draws),
                factor(variation.springRate(), SampledInput.SPRING_RATE, draws));
    }

    private static double scattered(Scatter scatter, SampledInput input, Draws draws) {
        return switch (scatter.law()) {
            case NORMAL -> scatter.size() * draws.normal(input.words());
            case UNIFORM -> scatter.size() * (2 * draws.uniform(input.words()) - 1);
        };
    }

    private static double factor(double coefficientOfVariation, SampledInput input, Draws draws) {
        return Variation.factor(coefficientOfVariation, draws.normal(input.words()));
    }
}
