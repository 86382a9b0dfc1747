package gripwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Records 200 taxels at 200 readings a second for as long as asked ({@code soak.seconds}), with the command as a user
 * starts it, and looks at every value of the log. Run by {@code ./check soak}; no part of {@code ./check}.
 */
class Soak {
    private static final int TAXELS = 200;
    private static final int RATE = 200;

    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    @Test
    void nothingIsLost() throws Exception {
        run(folder, Integer.getInteger("soak.seconds", 600));
    }

    static void run(Path folder, int seconds) throws Exception {
        new Shell(folder).run("new", "p");
        try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            Process recording = recording(folder, server.getLocalPort());
            Path status = Path.of("/proc/" + recording.pid() + "/status");
            long peak = 0;
            try (Socket socket = server.accept();
                    OutputStream to = new BufferedOutputStream(socket.getOutputStream(), 1 << 16)) {
                to.write(names().getBytes(StandardCharsets.UTF_8));
                long start = System.nanoTime();
                for (int i = 0; i < seconds * RATE; i++) {
                    long due = start + 1_000_000_000L / RATE * i;
                    long left = due - System.nanoTime();
                    if (left > 0) {
                        Thread.sleep(left / 1_000_000, (int) (left % 1_000_000));
                    }
                    to.write(reading(i).getBytes(StandardCharsets.UTF_8));
                    to.flush();
                    if (i % RATE == 0) {
                        peak = Math.max(peak, resident(status));
                    }
                }
            }
            int code = recording.waitFor();
            System.out.println(Files.readString(folder.resolve("out.txt")));
            System.out.println(
                    "resident memory at most " + peak / 1024 + " MB, heap " + heap(folder.resolve("gc.txt")));
            assertThat(code).isZero();
        }
        look(folder.resolve("soak.csv"), seconds * RATE);
    }

    private static Process recording(Path folder, int port) throws IOException {
        return new ProcessBuilder(
                        System.getProperty("java.home") + "/bin/java",
                        "-XX:+UseSerialGC",
                        "-XX:TieredStopAtLevel=1",
                        "-Xmx64m",
                        "-Xlog:gc:file=gc.txt",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "gripwright.cli.Main",
                        "record",
                        "p",
                        "--from",
                        "tcp:127.0.0.1:" + port,
                        "--to",
                        "soak.csv",
                        "--json",
                        "soak.json",
                        "--picture",
                        "soak.svg")
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("out.txt").toFile())
                .start();
    }

    private static String names() {
        StringBuilder line = new StringBuilder("seq,t");
        for (int k = 0; k < TAXELS; k++) {
            line.append(",p").append(k);
        }
        return line.append('\n').toString();
    }

    private static String reading(int i) {
        StringBuilder line = new StringBuilder(8 * TAXELS).append(i).append(',').append(i / (double) RATE);
        for (int k = 0; k < TAXELS; k++) {
            line.append(',').append(value(i, k));
        }
        return line.append('\n').toString();
    }

    /** Any value will do that differs from reading to reading and from taxel to taxel. */
    private static int value(int i, int k) {
        return 101_325 + (i * 31 + k * 17) % 997;
    }

    /** Every reading once, in order, every value as it was sent. */
    private static void look(Path log, int wanted) throws IOException {
        int[] next = {0};
        double[] worst = {0};
        List<Double> late = new ArrayList<>();
        try (Stream<String> lines = Files.lines(log)) {
            lines.filter(l -> Character.isDigit(l.charAt(0))).forEach(line -> {
                String[] own = line.split(",", 3);
                int i = next[0]++;
                if (!reading(i).equals(own[2] + "\n")) {
                    throw new IllegalStateException("reading " + i + " is " + own[2]);
                }
                late.add(Double.parseDouble(own[0]) - i / (double) RATE);
            });
        }
        assertThat(next[0]).isEqualTo(wanted);
        double least = late.stream().mapToDouble(d -> d).min().orElse(0);
        worst[0] = late.stream().mapToDouble(d -> d - least).max().orElse(0);
        List<Double> sorted = late.stream().map(d -> d - least).sorted().toList();
        System.out.println(next[0] + " readings of " + TAXELS
                + " taxels, each as it was sent; later than the earliest by"
                + " a median of " + ms(sorted.get(sorted.size() / 2)) + ", 99 % "
                + ms(sorted.get(sorted.size() * 99 / 100)) + ", at most " + ms(worst[0]) + "; log " + Files.size(log)
                + " bytes");
    }

    private static String ms(double seconds) {
        return Math.round(1e4 * seconds) / 10.0 + " ms";
    }

    /** Most resident memory so far [kB]. */
    private static long resident(Path status) {
        try (Stream<String> lines = Files.lines(status)) {
            return lines.filter(l -> l.startsWith("VmHWM:"))
                    .mapToLong(l -> Long.parseLong(l.replaceAll("[^0-9]", "")))
                    .findFirst()
                    .orElse(0);
        } catch (IOException e) {
            return 0; // it has ended, or this is no Linux
        }
    }

    /** Most heap before a collection and most after one. */
    private static String heap(Path gc) throws IOException {
        Pattern pause = Pattern.compile("([0-9]+)M->([0-9]+)M\\(");
        long before = 0;
        long after = 0;
        long pauses = 0;
        for (String line : Files.readAllLines(gc)) {
            Matcher m = pause.matcher(line);
            if (m.find()) {
                pauses++;
                before = Math.max(before, Long.parseLong(m.group(1)));
                after = Math.max(after, Long.parseLong(m.group(2)));
            }
        }
        return "at most " + before + " MB before and " + after + " MB after one of " + pauses + " collections";
    }

    public static void main(String[] args) throws Exception {
        run(Path.of(args[0]), Integer.parseInt(args[1]));
    }
}
