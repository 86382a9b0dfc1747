package gripwright.cli;

import picocli.CommandLine.Option;

/** Which object and which grip. */
final class PairOptions {
    @Option(names = "--object", required = true, paramLabel = "NAME", description = "The object, as in need.yaml.")
    private String object = "";

    @Option(names = "--grip", required = true, paramLabel = "NAME", description = "The grip, as in hand.yaml.")
    private String grip = "";

    String object() {
        return object;
    }

    String grip() {
        return grip;
    }
}
