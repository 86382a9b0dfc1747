package gripwright.cli;

import gripwright.closing.Numerics;
import gripwright.closing.Policies;
import gripwright.closing.Policy;
import gripwright.closing.Sensing;
import gripwright.model.Grip;
import gripwright.model.Hand;
import gripwright.study.RunnerFactory;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** What the motors and the arm do about what the chips feel. */
final class PolicyOption {
    @Option(
            names = "--policy",
            paramLabel = "WORD",
            converter = Reader.class,
            description = "What motors and arm do with what the chips of pads.yaml feel: blind (wind until they stall; "
                    + "so unless said otherwise), touch (each motor waits at its first touch), or centre (the arm "
                    + "centres the hand on the object by touch).")
    private Policy policy = Policies.BLIND;

    @Option(
            names = "--noise-seed",
            paramLabel = "S",
            description = "Seed of the chips' noise; ${DEFAULT-VALUE} unless said otherwise.")
    private long seed = 1;

    Policy policy() {
        return policy;
    }

    long seed() {
        return seed;
    }

    /** The seed where it matters. */
    OptionalLong noiseSeed() {
        return policy.feels() ? OptionalLong.of(seed) : OptionalLong.empty();
    }

    /** A line for the head of a result, with its line feeds; nothing of a blind hand. */
    String line() {
        return policy.feels()
                ? Words.wrapped("policy   " + policy.word() + ": " + policy.says() + "; noise seed " + seed) + "\n\n"
                : "";
    }

    /** The chips of a project; null if nothing here asks for them. */
    @Nullable
    Sensing sensing(OpenProject open, boolean wanted) {
        return wanted || policy.feels() ? sensing(open, seed) : null;
    }

    static Sensing sensing(OpenProject open, long seed) {
        try {
            return Sensing.of(PadCommands.setup(open), seed);
        } catch (IllegalArgumentException e) {
            throw new CommandFailure(
                    Exit.USAGE, e.getMessage() + "; change pads.yaml ('gripwright scan' says more)", e);
        }
    }

    /** Refuses what a hand cannot do with a grip. */
    static void check(Policy policy, Hand hand, Grip grip, @Nullable Sensing sensing) {
        String no = refusal(policy, hand, grip, sensing);
        if (!no.isEmpty()) {
            throw new CommandFailure(Exit.USAGE, "policy '" + policy.word() + "' is not possible: " + no);
        }
    }

    /** Why not; empty if it is possible. */
    static String refusal(Policy policy, Hand hand, Grip grip, @Nullable Sensing sensing) {
        return sensing == null || !policy.feels()
                ? ""
                : policy.refusal(hand, grip, sensing).orElse("");
    }

    /** Makes what closes with a policy. */
    static RunnerFactory factory(
            Surroundings.Closings closings,
            OpenProject open,
            Numerics numerics,
            Policy policy,
            @Nullable Sensing sensing) {
        return sensing == null
                ? closings.of(open.project(), numerics)
                : closings.of(open.project(), numerics, policy, sensing);
    }

    /** Reads the word of a policy. */
    static final class Reader implements ITypeConverter<Policy> {
        @Override
        public Policy convert(String value) {
            try {
                return Policies.of(value);
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(String.valueOf(e.getMessage()));
            }
        }
    }
}
