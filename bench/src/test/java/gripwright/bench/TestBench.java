package gripwright.bench;

import gripwright.closing.ClosingSimulator;
import gripwright.closing.Criteria;
import gripwright.study.ThreadJobs;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A bench over a copy of the test project, and a client of it. */
final class TestBench implements AutoCloseable {
    static final Closings SIMULATION = (project, numerics) -> (object, grip) -> new ClosingSimulator(
            project.hand(), grip, object, project.need().tableFriction(), numerics, Criteria.DEFAULT);

    final Path folder;
    final Bench bench;
    final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();

    TestBench(Path folder, int port) {
        this(folder, port, SIMULATION);
    }

    TestBench(Path folder, int port, Closings closings) {
        this.folder = folder;
        try {
            for (String file : new String[] {"hand.yaml", "need.yaml"}) {
                if (!Files.exists(folder.resolve(file))) {
                    try (InputStream in = TestBench.class.getResourceAsStream("project/" + file)) {
                        Files.copy(Objects.requireNonNull(in), folder.resolve(file));
                    }
                }
            }
            bench = Bench.start(new Bench.Options(
                    folder, InetAddress.getByName("127.0.0.1"), port, closings, new ThreadJobs(2), "test", "today"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    int port() {
        return URI.create(bench.address()).getPort();
    }

    HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create(bench.address()).resolve(path)).timeout(Duration.ofSeconds(180));
    }

    HttpResponse<String> send(HttpRequest.Builder request) {
        try {
            return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    HttpResponse<String> get(String path) {
        return send(request(path));
    }

    HttpResponse<String> post(String path, String body) {
        return send(request(path)
                .header("X-Gripwright-Token", field(get("/api/hello").body(), "token"))
                .POST(HttpRequest.BodyPublishers.ofString(body)));
    }

    String revision() {
        return field(get("/api/project").body(), "revision");
    }

    /** The first text of that name in JSON. */
    static String field(String json, String name) {
        Matcher m =
                Pattern.compile("\"" + name + "\":\"((?:[^\"\\\\]|\\\\.)*)\"").matcher(json);
        if (!m.find()) {
            throw new AssertionError("no '" + name + "' in " + json);
        }
        return m.group(1);
    }

    String text(String file) {
        try {
            return Files.readString(folder.resolve(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    void write(String file, String text) {
        try {
            Files.writeString(folder.resolve(file), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        bench.close();
    }
}
