package gripwright.bench;

import com.sun.net.httpserver.HttpExchange;
import gripwright.bench.Bench.Answer;
import gripwright.closing.ClosingDetail;
import gripwright.closing.Conditions;
import gripwright.closing.Criteria;
import gripwright.files.Tables;
import gripwright.files.json.CloseJson;
import gripwright.files.json.MapJson;
import gripwright.files.json.Origin;
import gripwright.files.json.TrialsJson;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.report.ClosingPicture;
import gripwright.report.HandPicture;
import gripwright.report.MapPicture;
import gripwright.report.ObjectPicture;
import gripwright.report.PageLook;
import gripwright.report.Picture;
import gripwright.report.TrialsPicture;
import gripwright.study.CaptureMap;
import gripwright.study.Sureness;
import gripwright.study.TrialsResult;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Which request does what. The description for scripts is the resource openapi.json. */
final class Routes {
    private static final double FARTHEST_MM = 300;
    private static final double MM = 1e-3;
    private static final String SVG = "image/svg+xml; charset=utf-8";

    private final Bench.Options options;
    private final Desk desk;
    private final Live live;
    private final Studies studies;
    private final Events events;
    private final Guard guard;
    private final Pads pads = new Pads();
    private final Map<String, Route> gets;
    private final Map<String, Consumer<Query>> posts;
    private final String instance = UUID.randomUUID().toString();

    Routes(Bench.Options options, Desk desk, Live live, Studies studies, Events events, Guard guard) {
        this.options = options;
        this.desk = desk;
        this.live = live;
        this.studies = studies;
        this.events = events;
        this.guard = guard;
        this.gets = reading();
        this.posts = changing();
    }

    /** What a page hears first on its stream. */
    List<String> greeting() {
        List<String> out = new ArrayList<>();
        out.add(Events.event(
                "hello",
                Wire.object("instance", instance, "revision", desk.state().revision())));
        MapJob map = studies.map();
        if (map != null) {
            out.add(Events.event("map", map.wire(true)));
        }
        TrialsJob trials = studies.trials();
        if (trials != null) {
            out.add(Events.event("trials", trials.wire()));
        }
        return out;
    }

    void projectChanged() {
        studies.stop();
        events.tell("project", Wire.object("revision", desk.state().revision()));
    }

    void stop() {
        studies.stop();
    }

    Answer answer(HttpExchange exchange) throws IOException, InterruptedException {
        String path = exchange.getRequestURI().getPath();
        if (exchange.getRequestMethod().equals("POST")) {
            return post(path, Query.of(Guard.body(exchange)));
        }
        return path.startsWith("/api/")
                ? get(path, Query.of(exchange.getRequestURI().getRawQuery()))
                : page(path);
    }

    private Answer page(String path) throws IOException {
        if (path.equals("/style.css")) {
            byte[] own = Objects.requireNonNull(Resource.read("bench.css"), "bench.css");
            String style = PageLook.styleSheet() + new String(own, StandardCharsets.UTF_8);
            return Answer.of(Resource.kind("style.css"), style.getBytes(StandardCharsets.UTF_8));
        }
        String name = path.equals("/") ? "index.html" : path.substring(1);
        byte[] content = Resource.read(name);
        if (content == null) {
            throw new Refusal(404, "there is no page " + path);
        }
        if (name.equals("index.html")) {
            String html = new String(content, StandardCharsets.UTF_8)
                    .replace("@@TOKEN@@", guard.token())
                    .replace("@@DEFINITIONS@@", PageLook.definitions());
            content = html.getBytes(StandardCharsets.UTF_8);
        }
        if (name.startsWith("lib/")) {
            return new Answer(200, Resource.kind(name), content, Map.of("Cache-Control", "private, max-age=86400"));
        }
        return Answer.of(Resource.kind(name), content);
    }

    /** What a request for a path is answered with. */
    @FunctionalInterface
    private interface Route {
        Answer answer(Query query) throws InterruptedException;
    }

    private Map<String, Route> reading() {
        Map<String, Route> to = new LinkedHashMap<>();
        to.put("/api/hello", q -> Answer.json(Wire.object("instance", instance, "token", guard.token())));
        to.put("/api/project", q -> Answer.json(ProjectWire.of(desk, options.version())));
        to.put("/api/preview", this::preview);
        to.put("/api/close", this::close);
        to.put("/api/sure", this::sure);
        to.put("/api/close.json", q -> closeFile(q, true));
        to.put("/api/close.svg", q -> closeFile(q, false));
        to.put("/api/objects.svg", q -> picture(q, ObjectPicture.draw(project().need()), "objects.svg"));
        to.put(
                "/api/hand.svg",
                q -> picture(
                        q,
                        q.text("file", "").isEmpty()
                                ? HandPicture.keyed(project().hand())
                                : HandPicture.draw(project().hand()),
                        "hand.svg"));
        to.put("/api/map.svg", q -> {
            MapJob job = result(studies.map(), "map");
            return picture(q, MapPicture.draw(job.result(), project().hand(), job.object()), "map.svg");
        });
        to.put(
                "/api/map.json",
                q -> Answer.file(
                        "map.json",
                        Resource.kind("x.json"),
                        MapJson.of(
                                origin(),
                                Criteria.DEFAULT,
                                result(result(studies.map(), "map").finished(), "map"))));
        to.put("/api/trials", q -> Answer.json(TrialsJob.table(trialsJob().project(), trialsResult())));
        to.put(
                "/api/trials.svg",
                q -> picture(
                        q,
                        TrialsPicture.table(
                                trialsResult(), trialsJob().project().need()),
                        "trials.svg"));
        to.put(
                "/api/trials.json",
                q -> Answer.file(
                        "trials.json",
                        Resource.kind("x.json"),
                        TrialsJson.of(
                                origin(),
                                Criteria.DEFAULT,
                                trialsJob().project().need().wantedSuccess(),
                                trialsResult())));
        to.put(
                "/api/trials.csv",
                q -> Answer.file("trials.csv", "text/csv; charset=utf-8", TrialsCsv.of(trialsResult())));
        to.put("/api/runs.csv", q -> runs("csv", "text/csv; charset=utf-8"));
        to.put("/api/runs.parquet", q -> runs("parquet", "application/vnd.apache.parquet"));
        to.put("/api/pads", q -> Answer.json(pads.wire(desk.state())));
        to.put("/api/pads.svg", q -> picture(q, pads.picture(desk.state(), q.text("pad")), "pad.svg"));
        to.put("/api/report.html", q -> report());
        return to;
    }

    private Map<String, Consumer<Query>> changing() {
        Map<String, Consumer<Query>> to = new LinkedHashMap<>();
        to.put("/api/value", q -> {
            desk.write(q.text("key"), q.text("value"), q.text("revision"));
            projectChanged();
        });
        to.put("/api/undo", q -> {
            desk.step(true);
            projectChanged();
        });
        to.put("/api/redo", q -> {
            desk.step(false);
            projectChanged();
        });
        to.put("/api/map", q -> {
            Desk.State state = desk.state();
            Project project = state.sound();
            int cells = q.whole("cells", 41, 5, 161);
            if (cells % 2 == 0) {
                throw new Refusal(
                        400, "cells is " + cells + "; expected an odd number, so that one cell is the nominal place");
            }
            double span = MM * q.number("span", 60, 1, FARTHEST_MM, "mm");
            studies.startMap(
                    project,
                    new MapJob.Wish(
                            project,
                            state.revision(),
                            object(project, q),
                            grip(project, q),
                            new CaptureMap(span, cells, project.need().wantedSuccess())));
        });
        to.put("/api/trials", q -> {
            Desk.State state = desk.state();
            int runs = q.whole("runs", 40, 1, 100_000);
            studies.startTrials(state.sound(), state.revision(), runs, q.whole("seed", 1, 0, 1_000_000_000));
        });
        to.put("/api/stop", q -> studies.stop());
        return to;
    }

    /** Paths that are read, and those that change something; the description for scripts names the same. */
    Set<String> paths(boolean changing) {
        return changing ? posts.keySet() : gets.keySet();
    }

    private Answer get(String path, Query query) throws InterruptedException {
        Route route = gets.get(path);
        if (route == null) {
            throw new Refusal(404, "there is nothing at " + path);
        }
        return route.answer(query);
    }

    private Answer post(String path, Query query) {
        Consumer<Query> change = posts.get(path);
        if (change == null) {
            throw new Refusal(404, "there is nothing to do at " + path);
        }
        change.accept(query);
        return Answer.json(Wire.object("revision", desk.state().revision()));
    }

    /** Every run of the trials as a row. */
    private Answer runs(String ending, String kind) {
        TrialsJob job = trialsJob();
        if (ending.equals("parquet") && !Tables.parquet()) {
            throw new Refusal(404, Tables.NO_PARQUET);
        }
        try {
            return Answer.file("runs." + ending, kind, Tables.bytes(job.runs(), ending));
        } catch (IOException e) {
            throw new UncheckedIOException("the table cannot be written", e);
        }
    }

    private TrialsJob trialsJob() {
        return result(studies.trials(), "trials");
    }

    private TrialsResult trialsResult() {
        return result(trialsJob().result(), "trials");
    }

    private Project project() {
        return desk.state().sound();
    }

    private static GraspObject object(Project project, Query query) {
        return project.need().object(query.text("object"));
    }

    private static Grip grip(Project project, Query query) {
        return project.hand().grip(query.text("grip"));
    }

    private static <T> T result(@Nullable T result, String what) {
        if (result == null) {
            throw new Refusal(404, "there is no " + what + " yet; start one first");
        }
        return result;
    }

    private Origin origin() {
        Project project = project();
        return new Origin(
                options.version(),
                desk.state().revision(),
                project.hand().name(),
                project.need().name(),
                project.assumptions());
    }

    private static Answer picture(Query query, Picture picture, String name) {
        return query.text("file", "").isEmpty()
                ? Answer.of(SVG, PageLook.svg(picture).getBytes(StandardCharsets.UTF_8))
                : Answer.file(name, SVG, picture.standAlone());
    }

    private Answer preview(Query query) {
        Desk.Preview p = desk.preview(query.text("key"), query.text("value"));
        return Answer.json(Wire.object(
                "file",
                p.file(),
                "line",
                p.line(),
                "before",
                p.before(),
                "after",
                p.after(),
                "faults",
                p.faults(),
                "also",
                p.also()));
    }

    private static Conditions conditions(Query q) {
        return new Conditions(
                MM * q.number("x", 0, -FARTHEST_MM, FARTHEST_MM, "mm"),
                MM * q.number("y", 0, -FARTHEST_MM, FARTHEST_MM, "mm"),
                Math.toRadians(q.number("turn", 0, -360, 360, "deg")),
                MM * q.number("height", 0, -FARTHEST_MM, FARTHEST_MM, "mm"),
                q.number("padFriction", 0, -10, 10, ""),
                q.number("tableFriction", 0, -10, 10, ""),
                q.number("mass", 0, -10, 10, ""),
                q.number("padStiffness", 1, 0.01, 100, ""),
                q.number("springRate", 1, 0.01, 100, ""));
    }

    private Answer close(Query query) throws InterruptedException {
        Live.Closing closing = live.close(wish(query));
        if (closing == null) {
            return Answer.json(204, "");
        }
        boolean all = query.text("frames", "1").equals("1");
        return Answer.json(
                ClosingWire.of(closing.object(), closing.grip(), closing.detail(), all, closing.milliseconds()));
    }

    private Answer sure(Query query) throws InterruptedException {
        Sureness sureness = live.sure(wish(query));
        return sureness == null ? Answer.json(204, "") : Answer.json(ClosingWire.sure(sureness));
    }

    private Live.Wish wish(Query query) {
        Desk.State state = desk.state();
        Project project = state.sound();
        return new Live.Wish(
                project,
                state.revision(),
                object(project, query),
                grip(project, query),
                conditions(query),
                query.text("page", ""),
                (long) query.number("number", 0));
    }

    private Answer closeFile(Query query, boolean json) throws InterruptedException {
        Live.Closing closing = live.close(wish(query));
        if (closing == null) {
            return Answer.json(204, "");
        }
        Project project = project();
        ClosingDetail detail = closing.detail();
        return json
                ? Answer.file(
                        "closing.json",
                        Resource.kind("x.json"),
                        CloseJson.of(
                                origin(), project.hand(), grip(project, query), closing.object(), detail, true, null))
                : Answer.file(
                        "closing.svg",
                        SVG,
                        ClosingPicture.draw(project.hand(), closing.object(), detail)
                                .standAlone());
    }

    private Answer report() {
        Desk.State state = desk.state();
        TrialsJob job = studies.trials();
        TrialsResult trials = job == null || !job.revision().equals(state.revision()) ? null : job.result();
        String html = new PageReport(options, state.sound(), state.revision(), trials)
                .write(studies.maps(state.revision()), pads.forReport(state));
        return Answer.file("report.html", Resource.kind("report.html"), html);
    }
}
