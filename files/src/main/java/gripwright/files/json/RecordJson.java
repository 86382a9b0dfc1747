package gripwright.files.json;

import gripwright.files.Recording;
import java.util.List;
import java.util.Locale;

/** A recording. Schema: docs/schema/record.schema.json. */
public final class RecordJson {
    private RecordJson() {}

    public static String of(Origin origin, Recording recording) {
        return JsonText.of(json -> {
            origin.write(json, "record");
            json.text("log", recording.log())
                    .text("side_file", recording.sideFile())
                    .text("source", recording.source())
                    .text("started", recording.started())
                    .text("end", recording.end().name().toLowerCase(Locale.ROOT).replace('_', ' '))
                    .text("end_words", recording.endWords())
                    .truth("whole", recording.counts().whole())
                    .texts("columns", recording.columns())
                    .texts("absent", recording.absent());
            recording
                    .continued()
                    .ifPresent(c -> json.object(
                            "continued", j -> j.whole("readings", c.readings()).whole("cut_bytes", c.cutBytes())));
            json.object("counts", j -> counts(j, recording.counts()));
            json.object("times", j -> times(j, recording.times()));
            json.number("strip_s", recording.stripSeconds());
            json.objects(
                    "strips",
                    recording.strips(),
                    (j, strip) -> j.whole("readings", strip.readings())
                            .whole("missing", strip.missing())
                            .whole("malformed", strip.malformed()));
            json.objects("taxels", recording.taxels(), RecordJson::taxel);
        });
    }

    private static void counts(JsonText json, Recording.Counts c) {
        json.whole("lines", c.lines())
                .whole("readings", c.readings())
                .whole("on_disk", c.safe())
                .whole("unsaved", c.unsaved())
                .whole("malformed", c.malformed())
                .whole("comments", c.comments())
                .whole("blank", c.blank())
                .whole("names_again", c.heads())
                .whole("gaps", c.gaps())
                .whole("missing", c.missing())
                .whole("repeats", c.repeats())
                .whole("late", c.late())
                .whole("restarts", c.restarts())
                .whole("counter_overruns", c.overruns())
                .whole("stamps_back", c.stampsBack())
                .whole("stamps_equal", c.stampsEqual());
    }

    private static void times(JsonText json, Recording.Times t) {
        json.number("duration_s", t.duration())
                .number("rate_per_s", t.rate())
                .whole("silences", t.silences())
                .number("longest_silence_s", t.longestSilence())
                .whole("wall_steps", t.wallSteps())
                .whole("most_waiting_bytes", t.mostWaiting())
                .whole("waits", t.waits());
    }

    private static void taxel(JsonText json, Recording.Taxel t) {
        json.text("column", t.column())
                .text("pad", t.pad())
                .whole("values", t.values())
                .number("last", t.last())
                .number("least", t.least())
                .number("greatest", t.greatest())
                .whole("saturated", t.saturated())
                .truth("stuck", t.stuck())
                .number("longest_unchanged_s", t.unchanged())
                .numbers("low", array(t.low()))
                .numbers("high", array(t.high()));
    }

    private static double[] array(List<Float> values) {
        // By its text, so that 3.1f is written as 3.1 and not as 3.0999999.
        return values.stream()
                .mapToDouble(v -> Double.parseDouble(v.toString()))
                .toArray();
    }
}
