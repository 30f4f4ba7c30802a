package org.cupbeam.event;

import java.util.ArrayList;
import java.util.List;

/** A lane's health, and its last will, as JSON. */
public final class HealthJson {
    private static final int MAX_SENSORS = 70;
    private static final int MAX_FAULTS = 50;

    private HealthJson() {
    }

    public static byte[] encode(Health health) {
        return JsonOut.bytes(to -> {
            to.word("state", health.state()).whole("connection", health.connection()).text("boot", health.boot());
            if (health.report() != null) {
                report(to, health.report());
            }
        });
    }

    public static Health decode(byte[] payload) throws BadMessage {
        Fields from = JsonIn.object(payload);
        Health.State state = from.word("state", Health.State.class);
        boolean will = state == Health.State.LOST && !from.has("journal");
        return new Health(state, from.whole("connection", 0, Long.MAX_VALUE), Parts.id(from, "boot"),
                will ? null : report(from));
    }

    private static void report(JsonOut to, Health.Report report) {
        to.text("journal", report.journal()).text("version", report.version())
                .text("time", report.time().toString()).word("clock", report.clock())
                .whole("outbox", report.outbox()).whole("edges_dropped", report.edgesDropped())
                .objects("sensors", report.sensors(), (sensor, is) -> sensor.text("name", is.name())
                        .word("kind", is.kind()).word("state", is.state())
                        .tenth("last_edge_s_ago", is.lastEdgeAgoS()).tenth("edges_per_minute", is.edgesPerMinute()))
                .texts("faults", report.faults());
        if (report.rolls() != null) {
            to.object("rolls", rolls -> RollsJson.write(rolls, report.rolls()));
        }
        if (!report.unknown().isEmpty()) {
            to.texts("unknown", report.unknown());
        }
    }

    private static Health.Report report(Fields from) throws BadMessage {
        List<Health.Sensor> sensors = new ArrayList<>();
        for (Fields each : from.objects("sensors", MAX_SENSORS)) {
            sensors.add(new Health.Sensor(each.text("name", Score.MAX_NAME),
                    each.word("kind", Health.Sensor.Kind.class), each.word("state", Health.Sensor.Condition.class),
                    each.numberOrNaN("last_edge_s_ago"), each.number("edges_per_minute")));
        }
        return new Health.Report(from.text("journal", Source::isJournal, "a journal's id"),
                from.text("version", Parts.MAX_TEXT), from.time("time"), from.word("clock", Stamp.Clock.class),
                from.whole("outbox", 0, Long.MAX_VALUE), from.whole("edges_dropped", 0, Long.MAX_VALUE), sensors,
                from.texts("faults", MAX_FAULTS, Parts.MAX_TEXT),
                from.has("rolls") ? RollsJson.read(from.object("rolls")) : null,
                from.has("unknown") ? from.texts("unknown", MAX_FAULTS, Parts.MAX_TEXT) : List.of());
    }
}
