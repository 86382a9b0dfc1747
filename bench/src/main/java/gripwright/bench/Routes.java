package gripwright.bench;

import com.sun.net.httpserver.HttpExchange;
import gripwright.bench.Bench.Answer;
import gripwright.closing.ClosingDetail;
import gripwright.closing.Conditions;
import gripwright.closing.Criteria;
import gripwright.closing.Numerics;
import gripwright.files.json.CloseJson;
import gripwright.files.json.MapJson;
import gripwright.files.json.Origin;
import gripwright.files.json.TrialsJson;
import gripwright.model.GraspObject;
import gripwright.model.Grip;
import gripwright.model.Project;
import gripwright.report.ClosingPicture;
import gripwright.report.HandPicture;
import gripwright.report.HtmlReport;
import gripwright.report.MapPicture;
import gripwright.report.ObjectPicture;
import gripwright.report.PageLook;
import gripwright.report.Picture;
import gripwright.report.ReportInput;
import gripwright.report.TrialsPicture;
import gripwright.study.MapResult;
import gripwright.study.TrialsResult;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
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
    private final String instance = UUID.randomUUID().toString();

    Routes(Bench.Options options, Desk desk, Live live, Studies studies, Events events, Guard guard) {
        this.options = options;
        this.desk = desk;
        this.live = live;
        this.studies = studies;
        this.events = events;
        this.guard = guard;
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
            return new Answer(
                    200, Resource.kind(name), content, java.util.Map.of("Cache-Control", "private, max-age=86400"));
        }
        return Answer.of(Resource.kind(name), content);
    }

    private Answer get(String path, Query query) throws InterruptedException {
        return switch (path) {
            case "/api/hello" -> Answer.json(Wire.object("instance", instance, "token", guard.token()));
            case "/api/project" -> Answer.json(ProjectWire.of(desk, options.version()));
            case "/api/preview" -> preview(query);
            case "/api/close" -> close(query);
            case "/api/close.json" -> closeFile(query, true);
            case "/api/close.svg" -> closeFile(query, false);
            case "/api/objects.svg" ->
                picture(query, ObjectPicture.draw(project().need()), "objects.svg");
            case "/api/hand.svg" -> picture(query, HandPicture.keyed(project().hand()), "hand.svg");
            case "/api/map.svg" -> {
                MapJob job = job(studies.map(), "map");
                MapResult map = result(job.result(), "map");
                yield picture(query, MapPicture.draw(map, project().hand(), job.object()), "map.svg");
            }
            case "/api/map.json" ->
                Answer.file(
                        "map.json",
                        Resource.kind("x.json"),
                        MapJson.of(
                                origin(),
                                Criteria.DEFAULT,
                                result(job(studies.map(), "map").result(), "map")));
            case "/api/trials" -> {
                TrialsJob job = job(studies.trials(), "trials");
                yield Answer.json(TrialsJob.table(job.project(), result(job.result(), "trials")));
            }
            case "/api/trials.svg" -> {
                TrialsJob job = job(studies.trials(), "trials");
                yield picture(
                        query,
                        TrialsPicture.table(
                                result(job.result(), "trials"), job.project().need()),
                        "trials.svg");
            }
            case "/api/trials.json" -> {
                TrialsJob job = job(studies.trials(), "trials");
                yield Answer.file(
                        "trials.json",
                        Resource.kind("x.json"),
                        TrialsJson.of(
                                origin(),
                                Criteria.DEFAULT,
                                job.project().need().wantedSuccess(),
                                result(job.result(), "trials")));
            }
            case "/api/report.html" -> report();
            default -> throw new Refusal(404, "there is nothing at " + path);
        };
    }

    private Answer post(String path, Query query) {
        switch (path) {
            case "/api/value" -> {
                desk.write(query.text("key"), query.text("value"), query.text("revision"));
                projectChanged();
            }
            case "/api/undo" -> {
                desk.step(true);
                projectChanged();
            }
            case "/api/redo" -> {
                desk.step(false);
                projectChanged();
            }
            case "/api/map" -> {
                Desk.State state = desk.state();
                Project project = state.sound();
                int cells = query.whole("cells", 41, 5, 161);
                if (cells % 2 == 0) {
                    throw new Refusal(
                            400,
                            "cells is " + cells + "; expected an odd number, so that one cell is the nominal place");
                }
                double span = MM * query.number("span", 60, 1, FARTHEST_MM, "mm");
                studies.startMap(project, state.revision(), object(project, query), grip(project, query), span, cells);
            }
            case "/api/trials" -> {
                Desk.State state = desk.state();
                int runs = query.whole("runs", 40, 1, 100_000);
                studies.startTrials(state.sound(), state.revision(), runs, query.whole("seed", 1, 0, 1_000_000_000));
            }
            case "/api/stop" -> studies.stop();
            default -> throw new Refusal(404, "there is nothing to do at " + path);
        }
        return Answer.json(Wire.object("revision", desk.state().revision()));
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

    private static MapJob job(@Nullable MapJob job, String what) {
        return result(job, what);
    }

    private static TrialsJob job(@Nullable TrialsJob job, String what) {
        return result(job, what);
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
                "file", p.file(), "line", p.line(), "before", p.before(), "after", p.after(), "faults", p.faults()));
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
        Live.Closing closing = closing(query);
        if (closing == null) {
            return Answer.json(204, "");
        }
        boolean all = query.text("frames", "1").equals("1");
        return Answer.json(
                ClosingWire.of(closing.object(), closing.grip(), closing.detail(), all, closing.milliseconds()));
    }

    private Live.@Nullable Closing closing(Query query) throws InterruptedException {
        Desk.State state = desk.state();
        Project project = state.sound();
        return live.close(
                project,
                state.revision(),
                object(project, query),
                grip(project, query),
                conditions(query),
                query.text("page", ""),
                (long) query.number("number", 0));
    }

    private Answer closeFile(Query query, boolean json) throws InterruptedException {
        Live.Closing closing = closing(query);
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

    /** The report of what the page has computed so far. */
    private Answer report() {
        Project project = project();
        MapJob map = studies.map();
        TrialsJob job = studies.trials();
        TrialsResult trials = job == null || !job.revision().equals(desk.state().revision()) ? null : job.result();
        MapResult mapped = map == null || !map.revision().equals(desk.state().revision()) ? null : map.result();
        List<ReportInput.Closing> closings = new ArrayList<>();
        var factory = options.closings().of(project, Numerics.DEFAULT.recording());
        for (GraspObject object : project.need().objects()) {
            String grip = object.grips().get(0);
            ClosingDetail detail =
                    factory.create(object, project.hand().grip(grip)).detail(Conditions.NOMINAL);
            closings.add(new ReportInput.Closing(object.name(), grip, "at its nominal place", detail));
        }
        ReportInput input = new ReportInput(
                project,
                closings,
                mapped == null ? List.of() : List.of(mapped),
                Optional.ofNullable(trials),
                Criteria.DEFAULT,
                Numerics.DEFAULT,
                new ReportInput.Provenance(
                        options.version(),
                        trials == null ? 0 : trials.seed(),
                        desk.state().revision(),
                        options.today(),
                        "gripwright bench",
                        List.of("hand.yaml", "need.yaml")));
        return Answer.file("report.html", Resource.kind("report.html"), HtmlReport.write(input));
    }
}
