package gripwright.bench;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/** Server-sent events: one stream per open page. A page that cannot keep up is dropped; it comes back by itself. */
final class Events {
    static final int MOST_PAGES = 16;
    private static final int MOST_WAITING = 2000;
    private static final long HEARTBEAT_SECONDS = 5;

    private final Set<BlockingQueue<String>> pages = ConcurrentHashMap.newKeySet();
    private volatile boolean closed;

    void tell(String event, String json) {
        if (closed) {
            return;
        }
        String text = "event: " + event + "\ndata: " + json + "\n\n";
        for (BlockingQueue<String> page : pages) {
            if (!page.offer(text)) {
                pages.remove(page);
            }
        }
    }

    /** Serves one page until it goes away. */
    void serve(HttpExchange exchange, Supplier<List<String>> greeting) throws IOException {
        if (pages.size() >= MOST_PAGES) {
            throw new Refusal(503, "the bench is open in " + MOST_PAGES + " pages already; close one");
        }
        BlockingQueue<String> queue = new ArrayBlockingQueue<>(MOST_WAITING);
        pages.add(queue);
        exchange.getResponseHeaders().set("Content-Type", "text/event-stream; charset=utf-8");
        exchange.sendResponseHeaders(200, 0);
        try (OutputStream out = exchange.getResponseBody()) {
            write(out, "retry: 700\n\n");
            for (String event : greeting.get()) {
                write(out, event);
            }
            while (!closed && pages.contains(queue)) {
                String next = queue.poll(HEARTBEAT_SECONDS, TimeUnit.SECONDS);
                write(out, next == null ? ": still here\n\n" : next);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            pages.remove(queue);
        }
    }

    static String event(String event, String json) {
        return "event: " + event + "\ndata: " + json + "\n\n";
    }

    void close() {
        closed = true;
        pages.forEach(page -> page.offer(": the server ends\n\n"));
    }

    private static void write(OutputStream out, String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.UTF_8));
        out.flush();
    }
}
