package gripwright.files.json;

import gripwright.signal.Decoder;
import java.util.List;

/** What happened in a decoded log; the forces themselves go to a table. Schema: decode in docs/schema. */
public final class DecodeJson {
    private DecodeJson() {}

    public static String of(
            Origin origin,
            String log,
            long rows,
            double first,
            double last,
            List<Decoder.Event> events,
            long count,
            List<String> remarks) {
        return JsonText.of(json -> {
            origin.write(json, "decode");
            json.text("log", log)
                    .whole("rows", rows)
                    .number("first_s", first)
                    .number("last_s", last)
                    .whole("event_count", count)
                    .objects(
                            "events",
                            events,
                            (j, e) -> j.number("time_s", e.time())
                                    .text("pad", e.pad())
                                    .text("event", e.kind().words())
                                    .whole("taxel", e.taxel()))
                    .texts("remarks", remarks);
            origin.writeAssumptions(json);
        });
    }
}
