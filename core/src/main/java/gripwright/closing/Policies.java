package gripwright.closing;

import java.util.List;

/** All drive policies. */
public final class Policies {
    public static final Policy BLIND = new PullBlind();

    public static final List<Policy> ALL = List.of(
            BLIND, //
            new StopOnTouch(),
            new CentreOnTouch());

    private Policies() {}

    /** @throws IllegalArgumentException with the words there are */
    public static Policy of(String word) {
        return ALL.stream()
                .filter(p -> p.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no drive policy is called '" + word + "'; there are: "
                        + String.join(", ", ALL.stream().map(Policy::word).toList())));
    }
}
