package org.cupbeam.event;

import java.time.Instant;

/**
 * Events as CloudEvents 1.0 in structured JSON, each payload at most 64 KiB.
 *
 * <p>The specification: CloudEvents 1.0.2, JSON event format; MQTT 3.1.1 binding, whose only mode is structured.
 */
public final class EventJson {
    /** The media type that the MQTT binding implies. */
    public static final String CONTENT_TYPE = "application/cloudevents+json";

    private EventJson() {
    }

    /**
     * What can be told of an event without looking at what it says.
     *
     * @param type as in {@link Data#type()}
     */
    public record Envelope(Source source, long sequence, Instant time, String type) {
    }

    public static byte[] encode(Event event) {
        return JsonOut.bytes(to -> to.text("specversion", "1.0")
                .sequence("id", event.sequence())
                .text("source", event.source().toString())
                .text("type", event.data().type())
                .sequence("sequence", event.sequence())
                .text("time", event.time().toString())
                .text("datacontenttype", "application/json")
                .object("data", data -> DataJson.write(data, event.data())));
    }

    public static Event decode(byte[] payload) throws BadMessage {
        Fields from = JsonIn.object(payload);
        Envelope envelope = envelope(from);
        Data data = DataJson.read(from.object("data"), envelope.type());
        return new Event(envelope.source(), envelope.sequence(), envelope.time(), data);
    }

    /** The envelope alone, for a reader who keeps what it does not understand. */
    public static Envelope envelope(byte[] payload) throws BadMessage {
        return envelope(JsonIn.object(payload));
    }

    private static Envelope envelope(Fields from) throws BadMessage {
        from.text("specversion", "1.0"::equals, "1.0");
        Source source = Source.parse(from.text("source", text -> Source.parse(text) != null, Source.RULE));
        long sequence = from.sequence("id");
        if (from.has("sequence") && from.sequence("sequence") != sequence) {
            throw from.bad("sequence", "is not the id", "give the same 16 digits");
        }
        return new Envelope(source, sequence, from.time("time"), from.text("type", 100));
    }
}
