package gripwright.cli;

import gripwright.bench.Bench;
import gripwright.study.Jobs;
import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The project in a browser. */
@Command(
        name = "bench",
        description =
                "Open the project in a browser: look at it, change it, watch it close, see how far off it may be.",
        footer = {
            "",
            "The server answers this machine only, needs no network, and ends with Ctrl-C.",
            "Values changed in the page are written into DIR's own files, each at its place and nowhere else.",
            "",
            "Examples:",
            "  gripwright bench bench",
            "  gripwright bench bench --port 8230 --no-browser"
        })
final class BenchCommand implements java.util.concurrent.Callable<Integer> {
    private static final int GREATEST_PORT = 65_535;
    private static final long LOOK_MILLISECONDS = 100;

    private final Surroundings at;

    @Parameters(paramLabel = "DIR", description = "The project folder.")
    private Path dir = Path.of("");

    @Option(names = "--port", paramLabel = "N", description = "Listen there; 0, any free one, unless said otherwise.")
    private int port;

    @Option(
            names = "--address",
            paramLabel = "IP",
            description = "Listen on this address instead of 127.0.0.1. Whoever can reach it can change the project.")
    private @Nullable String address;

    @Option(names = "--no-browser", description = "Do not open a browser.")
    private boolean noBrowser;

    @Mixin
    private final ThreadOption threads = new ThreadOption();

    BenchCommand(Surroundings at) {
        this.at = at;
    }

    @Override
    public Integer call() {
        Quantities.whole("--port", port, 0, GREATEST_PORT);
        Jobs jobs = threads.jobs();
        Path folder = OpenProject.folder(at, dir).toAbsolutePath().normalize();
        InetAddress where = where();
        Bench.Options options = new Bench.Options(
                folder,
                where,
                port,
                at.closings()::of,
                jobs,
                Version.TEXT,
                at.today().get().toString());
        at.interruption().listen();
        try (Bench bench = Bench.start(options)) {
            at.out().println("bench    " + bench.address());
            at.out()
                    .println(
                            where.isLoopbackAddress()
                                    ? "         for this machine only; Ctrl-C ends it"
                                    : "         open to whoever can reach this address; Ctrl-C ends it");
            at.out().flush();
            if (!noBrowser) {
                open(bench.address());
            }
            while (!at.interruption().requested()) {
                Thread.sleep(LOOK_MILLISECONDS);
            }
            return Exit.YES.code();
        } catch (IOException e) {
            throw new CommandFailure(
                    Exit.FILES,
                    "cannot listen on " + where.getHostAddress() + " port " + port + ": " + e.getMessage()
                            + "; another program may use it: leave --port out and any free one is taken",
                    e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Exit.STOPPED.code();
        }
    }

    private InetAddress where() {
        String given = address == null ? "127.0.0.1" : address;
        // Digits and colons only: a name would be looked up in the network.
        if (!given.matches("[0-9.]+|[0-9a-fA-F:.]*:[0-9a-fA-F:.]*")) {
            throw new CommandFailure(
                    Exit.USAGE, "--address is '" + given + "'; expected an IP address, such as 192.168.1.20");
        }
        try {
            return InetAddress.getByName(given);
        } catch (UnknownHostException e) {
            throw new CommandFailure(
                    Exit.USAGE, "--address is '" + given + "'; expected an IP address, such as 192.168.1.20", e);
        }
    }

    /** Opens the default browser if this looks like a desktop; the address is printed anyway. */
    private static void open(String url) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        boolean desktop = System.getenv("DISPLAY") != null || System.getenv("WAYLAND_DISPLAY") != null;
        List<String> command = system.contains("win")
                ? List.of("rundll32", "url.dll,FileProtocolHandler", url)
                : system.contains("mac") ? List.of("open", url) : desktop ? List.of("xdg-open", url) : List.of();
        if (command.isEmpty()) {
            return;
        }
        try {
            new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException e) {
            return; // no browser to be had: the address is on the screen
        }
    }
}
