package gripwright.bench;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import gripwright.study.Jobs;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;

/**
 * The server of the bench. It listens on one address, answers only requests of its own page (see {@link Guard}), reads
 * and writes only the project's own files and its finished runs in {@code results}, and starts no other program.
 */
public final class Bench implements AutoCloseable {
    /** Longest time a request may take to arrive [s]; a connection that dawdles is closed. */
    static final int REQUEST_SECONDS = 5;

    private static final String POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
                    + " connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
    private static final int MOST_THREADS = 48;
    private static final long LOOK_MILLISECONDS = 400;
    private static final int WORTH_PACKING = 700;

    /**
     * What to serve and where.
     *
     * @param folder the project
     * @param address to listen on; the loopback address unless the user gave another
     * @param port 0 = any that is free
     * @param version of the program, for the title block
     * @param today for the date on a report, as it is to be printed
     */
    public record Options(
            Path folder, InetAddress address, int port, Closings closings, Jobs jobs, String version, String today) {}

    static {
        // Read by the JDK's server when its first instance is made.
        System.setProperty("sun.net.httpserver.maxReqTime", Integer.toString(REQUEST_SECONDS));
        System.setProperty("sun.net.httpserver.maxReqHeaders", "60");
        System.setProperty("sun.net.httpserver.nodelay", "true");
    }

    private final HttpServer server;
    private final ExecutorService threads;
    private final Guard guard;
    private final Events events = new Events();
    private final Desk desk;
    private final Live live;
    private final Routes routes;
    private final Thread watch;
    private volatile boolean closed;

    private Bench(Options options) throws IOException {
        server = HttpServer.create(new InetSocketAddress(options.address, options.port), 64);
        guard = new Guard(options.address, server.getAddress().getPort());
        desk = new Desk(options.folder);
        live = new Live(options.closings);
        Studies studies =
                new Studies(events, options.closings, options.jobs, live, new Journal(options.folder, options.version));
        routes = new Routes(options, desk, live, studies, events, guard);
        threads = new ThreadPoolExecutor(4, MOST_THREADS, 30, TimeUnit.SECONDS, new SynchronousQueue<>(), task -> {
            Thread thread = new Thread(task, "gripwright-http");
            thread.setDaemon(true);
            return thread;
        });
        server.setExecutor(threads);
        server.createContext("/", this::handle);
        watch = new Thread(this::watch, "gripwright-watch");
        watch.setDaemon(true);
    }

    /**
     * Starts a server that runs until it is closed.
     *
     * @throws IOException if the address or port is not to be had
     */
    public static Bench start(Options options) throws IOException {
        Bench bench = new Bench(options);
        bench.server.start();
        bench.watch.start();
        return bench;
    }

    /** Where the page is. */
    public String address() {
        InetSocketAddress at = server.getAddress();
        String host = at.getAddress().getHostAddress();
        return "http://" + (host.contains(":") ? "[" + host + "]" : host) + ":" + at.getPort() + "/";
    }

    @Override
    public void close() {
        closed = true;
        // First: a page that heard of a study stopped by the end of the server would not go on with it.
        events.close();
        routes.stop();
        server.stop(0);
        threads.shutdownNow();
        live.close();
        watch.interrupt();
    }

    private void watch() {
        while (!closed) {
            try {
                Thread.sleep(LOOK_MILLISECONDS);
                if (desk.look()) {
                    routes.projectChanged();
                }
            } catch (InterruptedException e) {
                return;
            } catch (RuntimeException e) {
                // A file is just being written; the next look sees it whole.
                continue;
            }
        }
    }

    private void handle(HttpExchange exchange) throws IOException {
        try (exchange) {
            Answer answer;
            try {
                guard.check(exchange);
                if (exchange.getRequestURI().getPath().equals("/api/events")) {
                    secure(exchange);
                    events.serve(exchange, routes::greeting);
                    return;
                }
                answer = routes.answer(exchange);
            } catch (Refusal e) {
                answer = Answer.json(e.status(), e.body());
            } catch (IllegalArgumentException e) {
                // The model's own words on what does not fit, as on the command line.
                answer = Answer.json(422, new Refusal(422, String.valueOf(e.getMessage())).body());
            } catch (RuntimeException e) {
                answer = Answer.json(500, new Refusal(500, "a defect in Gripwright itself: " + e).body());
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                answer = Answer.json(503, new Refusal(503, "the server is ending").body());
            }
            send(exchange, answer);
        }
    }

    private static void secure(HttpExchange exchange) {
        var headers = exchange.getResponseHeaders();
        headers.set("Content-Security-Policy", POLICY);
        headers.set("X-Content-Type-Options", "nosniff");
        headers.set("Referrer-Policy", "no-referrer");
        headers.set("Cross-Origin-Resource-Policy", "same-origin");
        headers.set("Cross-Origin-Opener-Policy", "same-origin");
        headers.set("X-Frame-Options", "DENY");
        headers.set("Cache-Control", "no-store");
    }

    private static void send(HttpExchange exchange, Answer answer) throws IOException {
        secure(exchange);
        var headers = exchange.getResponseHeaders();
        headers.set("Content-Type", answer.kind());
        answer.headers().forEach(headers::set);
        byte[] body = answer.body();
        List<String> accepts = exchange.getRequestHeaders().getOrDefault("Accept-Encoding", List.of());
        if (body.length > WORTH_PACKING && accepts.stream().anyMatch(a -> a.contains("gzip"))) {
            headers.set("Content-Encoding", "gzip");
            body = packed(body);
        }
        boolean bare = exchange.getRequestMethod().equals("HEAD") || answer.status() == 204;
        exchange.sendResponseHeaders(answer.status(), bare || body.length == 0 ? -1 : body.length);
        if (!bare && body.length > 0) {
            exchange.getResponseBody().write(body);
        }
    }

    private static byte[] packed(byte[] body) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream(body.length / 3 + 64);
        try (OutputStream zip = new Gzip(out)) {
            zip.write(body);
        }
        return out.toByteArray();
    }

    /** Fast rather than small: the way is short. */
    private static final class Gzip extends GZIPOutputStream {
        Gzip(OutputStream to) throws IOException {
            super(to);
            def.setLevel(Deflater.BEST_SPEED);
        }
    }

    /** Paths of the interface, for a test: those that are read, or those that change something. */
    java.util.Set<String> paths(boolean changing) {
        return routes.paths(changing);
    }

    /** What a page hears first, for a test. */
    String greeting() {
        return String.join("", routes.greeting());
    }

    /** What goes back to the page. */
    record Answer(int status, String kind, byte[] body, java.util.Map<String, String> headers) {
        static Answer of(String kind, byte[] body) {
            return new Answer(200, kind, body, java.util.Map.of());
        }

        static Answer json(String json) {
            return json(200, json);
        }

        static Answer json(int status, String json) {
            return new Answer(
                    status,
                    "application/json; charset=utf-8",
                    json.getBytes(StandardCharsets.UTF_8),
                    java.util.Map.of());
        }

        /** Offered as a file. */
        static Answer file(String name, String kind, String text) {
            return file(name, kind, text.getBytes(StandardCharsets.UTF_8));
        }

        static Answer file(String name, String kind, byte[] content) {
            return new Answer(
                    200,
                    kind,
                    content,
                    java.util.Map.of("Content-Disposition", "attachment; filename=\"" + name + "\""));
        }
    }
}
