package org.cupbeam.bench;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Stations;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Command;
import org.cupbeam.event.Data;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Stored;
import org.cupbeam.event.StoredJson;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Topics;
import org.cupbeam.journal.JournalException;
import org.cupbeam.lane.Lane;
import org.cupbeam.lane.LaneSettings;
import org.cupbeam.lane.Surroundings;
import org.cupbeam.link.LinkOptions;
import org.cupbeam.rig.Rig;
import org.eclipse.paho.client.mqttv3.MqttException;

/** A whole lane, with its journal and its link, on which one putt after another drops; a host stores what it tells. */
final class PuttedLane implements AutoCloseable {
    static final Topics TOPICS = new Topics("bench", "lane-1");
    /** For how long the tracker waits after a pulse, lest it be chatter. */
    static final long QUIET_NS = 1_500_000;
    /** Between the putts, in the lane's time, which is set ahead by so much. */
    private static final long REST_NS = 10_000_000_000L;

    private final Witness witness = new Witness();
    private final List<HoledPutt.Edge> putt;
    private final Lane lane;
    private final Subscriber host;
    private EdgeSink sink;

    PuttedLane(Rig rig, Path journal, Broker broker, Subscriber host) throws JournalException {
        this.host = host;
        putt = HoledPutt.edges(rig);
        Drill ladder = new Drill("Ladder", new Stations.Ladder(914.4, 914.4, 10), 6, Supply.EVERY_STATION, 1,
                OptionalDouble.empty(), Penalty.NONE, Turns.STATION);
        lane = Lane.open(LaneSettings.of(TOPICS, rig, journal).with(new Command.Start(ladder, List.of("Ann", "Bob"), Tags.NONE)),
                new Surroundings(witness, 1, witness, () -> true, UUID.randomUUID().toString(), "bench"),
                LinkOptions.open(broker.uri()));
        lane.start(new EdgeSource() {
            @Override
            public void start(EdgeSink edges) {
                sink = edges;
            }

            @Override
            public void close() {
            }
        });
    }

    /** How long one putt took, and where, ns. */
    record Took(long wholeNs, long resolvedNs, long handedOverNs, long writtenNs, long sentNs) {
    }

    /** Nothing happens for so long that the journal tidies up. */
    void rest() throws InterruptedException {
        witness.goAheadTo(witness.getAsLong() + REST_NS);
        TimeUnit.SECONDS.sleep(1);
    }

    /** Lets one drop, and waits until a subscriber has it. */
    Took putt() throws InterruptedException, MqttException, BadMessage {
        HoledPutt.Edge last = putt.get(putt.size() - 1);
        long beganNs = witness.getAsLong() + REST_NS;
        for (HoledPutt.Edge each : putt.subList(0, putt.size() - 1)) {
            witness.goAheadTo(beganNs + each.timeNs());
            sink.edge(each.channel(), each.active(), beganNs + each.timeNs());
        }
        TimeUnit.NANOSECONDS.sleep(HoledPutt.IN_CUP_NS);
        long decidedNs = System.nanoTime();
        witness.look(decidedNs + QUIET_NS);
        sink.edge(last.channel(), last.active(), witness.getAsLong());
        Subscriber.Received event = host.await(PuttedLane::isAttempt);
        Took took = took(decidedNs, event.atNs());
        long sequence = EventJson.envelope(event.payload()).sequence();
        host.publish(TOPICS.stored(), StoredJson.encode(new Stored(lane.journal(), sequence)), true);
        return took;
    }

    /** The journal's thread may look at the clock only after the event is here; then the broker took no time of its own. */
    private Took took(long decidedNs, long atNs) {
        long resolvedNs = witness.resolvedNs();
        long writingNs = witness.writingNs();
        long writtenNs = witness.writtenNs() == 0 ? atNs : Math.min(atNs, witness.writtenNs());
        return new Took(atNs - decidedNs, resolvedNs - decidedNs, writingNs - resolvedNs, writtenNs - writingNs,
                atNs - writtenNs);
    }

    private static boolean isAttempt(Subscriber.Received message) {
        try {
            return message.topic().equals(TOPICS.event())
                    && EventJson.envelope(message.payload()).type().equals(Data.ATTEMPT);
        } catch (BadMessage unreadable) {
            throw new IllegalStateException(unreadable);
        }
    }

    @Override
    public void close() {
        lane.close();
    }
}
