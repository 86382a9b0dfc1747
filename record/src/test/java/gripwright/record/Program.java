package gripwright.record;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;

/** {@link RecordingProgram} while it runs. */
final class Program implements AutoCloseable {
    private final Process process;
    private final List<String> said = new CopyOnWriteArrayList<>();
    private final Thread listener;

    /** @param before shell words before java, such as a limit */
    Program(String before, String from, String log) throws IOException {
        String java = System.getProperty("java.home") + "/bin/java";
        List<String> command = new ArrayList<>(List.of(
                "bash",
                "-c",
                before + "exec \"$@\"",
                "bash",
                java,
                "-Xmx128m",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                "gripwright.record.RecordingProgram",
                from,
                log));
        process = new ProcessBuilder(command).redirectErrorStream(true).start();
        listener = new Thread(this::listen, "listener");
        listener.start();
    }

    private void listen() {
        try (BufferedReader in =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                said.add(line);
            }
        } catch (IOException e) {
            said.add("gone: " + e);
        }
    }

    OutputStream input() {
        return process.getOutputStream();
    }

    /** Kills it as {@code kill -9} does. */
    void kill() throws InterruptedException {
        process.destroyForcibly();
        ended();
    }

    List<String> ended() throws InterruptedException {
        if (!process.waitFor(20, TimeUnit.SECONDS)) {
            throw new IllegalStateException("it does not end; it said " + said);
        }
        listener.join(5_000);
        return List.copyOf(said);
    }

    /** Waits until it says so. */
    void await(String word) throws InterruptedException {
        for (int i = 0; i < 400 && said.stream().noneMatch(l -> l.contains(word)); i++) {
            Thread.sleep(50);
        }
        if (said.stream().noneMatch(l -> l.contains(word))) {
            throw new IllegalStateException("it never said '" + word + "' but " + said);
        }
    }

    /** The greatest number of readings it has said to be written. */
    long written() {
        return said.stream()
                .filter(l -> l.startsWith("written "))
                .mapToLong(l -> Long.parseLong(l.substring("written ".length())))
                .max()
                .orElse(0);
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
