package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Event;
import org.cupbeam.event.Sequence;
import org.cupbeam.event.StoredJson;
import org.cupbeam.fuzz.Fuzz;
import org.cupbeam.fuzz.Target;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.store.Keeper;

/**
 * Messages under a lane's event topic, through the host's ingest into a store. {@code @@@@} is the next number of the lane's
 * journal, so that what can be kept is. A store that cannot keep what ingest hands it is a fault: ingest would try for ever.
 */
public final class EventTarget implements Target, AutoCloseable {
    private static final String NEXT = "@@@@";
    private static final List<String> TOPICS = List.of("cupbeam/home/one/event", "cupbeam/home/two/event", "cupbeam/away/one/event",
            "cupbeam/home/one/event/more", "");

    final Pages pages;
    private final Intake intake;
    private long kept;
    private int deadLetters;
    private String problem = ACCEPTED;

    public EventTarget() throws Exception {
        pages = new Pages(Fuzz.folder("host"));
        Keeper keeper = new Keeper(pages.store);
        EventLog log = new EventLog() {
            @Override
            public List<Kept> kept() {
                return keeper.kept();
            }

            @Override
            public void commit(Batch batch) {
                try {
                    keeper.commit(batch);
                } catch (RuntimeException cannot) {
                    throw new AssertionError("the store cannot keep what ingest took", cannot);
                }
                deadLetters += batch.deadLetters().size();
                batch.deadLetters().forEach(each -> problem = each.reason());
                batch.arrivals().stream().filter(each -> each.problem() != null).forEach(each -> problem = each.problem());
            }
        };
        intake = new Intake(Turns.always(log), Patience.WITH_LANES, this::stored, arrivals -> { }, Clock.systemUTC(), System::nanoTime);
    }

    private void stored(Message message) {
        try {
            if (message.topic().startsWith("cupbeam/home/one/")) {
                kept = StoredJson.decode(message.payload()).sequence();
            }
        } catch (BadMessage e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public String name() {
        return "event";
    }

    @Override
    public List<byte[]> seeds() {
        ScriptedLane lane = new ScriptedLane("one", "j1");
        List<Event> events = List.of(lane.starts("r1", "d1", "Ada", 1), lane.passes(1).starts("r2", "d1", "Bo", 2),
                lane.passes(10).holes("r1", "d1", "Ada", 1), lane.passes(10).misses("r1", "d1", "Ada", 2, 417),
                lane.voids(4, "Kim", "a dog"), lane.takesBack(3), lane.passes(10).misses("r2", "d1", "Bo", 1, 1_200),
                lane.passes(10).puttsOutsideAnyRun(), lane.ends("r1", "d1", "Ada", 1, 1, 1, Double.NaN),
                lane.ends("r2", "d1", "Bo", 0, 1, 0, 1_200), lane.endsDuel("d1", "Ada"),
                lane.boots("boot-2", lane.wall().minusSeconds(1_000_000_000)).puttsOutsideAnyRun(), lane.setsClock(lane.wall()));
        List<byte[]> seeds = new ArrayList<>();
        for (Event each : events) {
            String json = new String(ScriptedLane.json(each), StandardCharsets.UTF_8);
            seeds.add((0 + json.replace("\"" + Sequence.text(each.sequence()) + "\"", "\"" + NEXT + "\""))
                    .getBytes(StandardCharsets.UTF_8));
        }
        return seeds;
    }

    @Override
    public List<String> words() {
        return List.of("\"" + NEXT + "\"", "\"r1\"", "\"r2\"", "\"d1\"", "\"Ada\"", "\"Bo\"", "\"𝄞\"", "\"of\":\"0000000000000003\"", "\"j1\"",
                "\"boot-1\"", "\"unsynchronised\"", "\"synchronised\"", "\"time\":\"9999-12-31T23:59:59-18:00\"",
                "\"time\":\"0000-01-01T00:00:00+18:00\"", "\"wall\":\"1970-01-01T00:00:00Z\"", "\"monotonic_ns\":9223372036854775807",
                "\"org.cupbeam.run.v1\"", "\"org.cupbeam.clock.v1\"", "\"org.cupbeam.attempt.v1\"", "\"org.cupbeam.correction.v1\"",
                "\"play\":null", "999999999", "1e-300", "1000000", "\"taken-back\"", "\"voided\"", "\"reason\":\"x\"", "null");
    }

    @Override
    public int longest() {
        return 64 * 1024 + 16;
    }

    @Override
    public String take(byte[] input) throws Exception {
        int topic = input.length == 0 ? 0 : Math.floorMod(input[0] - '0', TOPICS.size());
        byte[] payload = new String(input, 0, input.length, StandardCharsets.ISO_8859_1).replace(NEXT, Sequence.text(kept + 1))
                .getBytes(StandardCharsets.ISO_8859_1);
        problem = ACCEPTED;
        intake.offer(Message.of(TOPICS.get(topic), payload.length == 0 ? payload : Arrays.copyOfRange(payload, 1, payload.length)));
        assertThat(intake.step(0)).isTrue();
        return problem;
    }

    int deadLetters() {
        return deadLetters;
    }

    long kept() {
        return kept;
    }

    @Override
    public void close() {
        pages.close();
    }
}
