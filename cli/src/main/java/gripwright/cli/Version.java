package gripwright.cli;

import picocli.CommandLine.IVersionProvider;

/** The version, kept equal to that of the build by a test. */
final class Version implements IVersionProvider {
    static final String TEXT = "0.1.0";

    @Override
    public String[] getVersion() {
        return new String[] {"gripwright " + TEXT};
    }
}
