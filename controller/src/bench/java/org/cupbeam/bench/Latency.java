package org.cupbeam.bench;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.trace.VcdWriter;
import org.cupbeam.rig.Rig;

/**
 * From the edge that decides a putt to its event at a subscriber. The disk's and the broker's own times are taken in turn
 * with it, each after as long a rest, so that whatever disturbs one disturbs the others.
 */
final class Latency {
    private static final int WARM_UP = 200;
    private static final int TIMES = Integer.getInteger("times", 1_000);
    private static final int REST_MS = 10;
    private static final double QUIET_MS = 1.5;
    private static final Pattern DECIDED = Pattern.compile("\"decided_ns\": (\\d+)");

    private final Samples sync = new Samples();
    private final Samples commit = new Samples();
    private final Samples roundTrip = new Samples();
    private final Samples whole = new Samples();
    private final Samples resolved = new Samples();
    private final Samples handedOver = new Samples();
    private final Samples written = new Samples();
    private final Samples sent = new Samples();
    private final Samples plain = new Samples();

    private Latency() {
    }

    static void measure(Report report) throws Exception {
        Path folder = Files.createTempDirectory(report.file("."), "latency");
        Optional<Broker> found = Broker.start(report);
        if (found.isPresent()) {
            try (Broker broker = found.get()) {
                Latency latency = new Latency();
                latency.lane(folder, broker);
                latency.yardstick(folder, broker);
                latency.tell(report);
            }
        }
    }

    private void lane(Path folder, Broker broker) throws Exception {
        try (Subscriber host = new Subscriber(broker, PuttedLane.TOPICS.event(), Floors.TOPIC);
             Floors floors = new Floors(folder, broker);
             PuttedLane lane = new PuttedLane(PracticeRigs.STANDARD.level(), folder.resolve("lane.db"), broker, host)) {
            for (int i = -WARM_UP; i < TIMES; i++) {
                TimeUnit.MILLISECONDS.sleep(REST_MS);
                long syncNs = floors.syncNs();
                TimeUnit.MILLISECONDS.sleep(REST_MS);
                long commitNs = floors.commitNs();
                TimeUnit.MILLISECONDS.sleep(REST_MS);
                long roundTripNs = floors.roundTripNs(host);
                PuttedLane.Took took = lane.putt();
                if (i >= 0) {
                    sync.add(syncNs);
                    commit.add(commitNs);
                    roundTrip.add(roundTripNs);
                    whole.add(took.wholeNs());
                    resolved.add(took.resolvedNs());
                    handedOver.add(took.handedOverNs());
                    written.add(took.writtenNs());
                    sent.add(took.sentNs());
                }
            }
        }
    }

    private void yardstick(Path folder, Broker broker) throws Exception {
        Rig rig = PracticeRigs.STANDARD.level();
        Path trace = folder.resolve("putt.vcd");
        try (OutputStream out = Files.newOutputStream(trace); VcdWriter writer = new VcdWriter(out, rig, 0, Instant.EPOCH)) {
            HoledPutt.play(HoledPutt.edges(rig), 1_000_000, writer);
        }
        try (Subscriber subscriber = new Subscriber(broker, "yardstick/event")) {
            Process script = Yardstick.start("live", trace.toString(), Integer.toString(broker.port()),
                    Integer.toString(TIMES));
            for (int i = 0; i < TIMES; i++) {
                Subscriber.Received event = subscriber.await(each -> true);
                Matcher decided = DECIDED.matcher(new String(event.payload(), StandardCharsets.UTF_8));
                if (decided.find()) {
                    plain.add(event.atNs() - Long.parseLong(decided.group(1)));
                }
            }
            script.waitFor(10, TimeUnit.SECONDS);
        }
    }

    private void tell(Report report) {
        report.title("Deciding edge to event at a subscriber, the journal synced on the way");
        report.line("%s", Samples.head());
        report.line("%s", sync.row("the disk's own: 12 KB appended and synced"));
        report.line("%s", commit.row("the disk's own: a row committed by SQLite"));
        report.line("%s", roundTrip.row("the broker's own: publisher to subscriber"));
        report.line("%s", whole.row("a lane: edge to event"));
        List.of(resolved.row("  of it until the attempt is resolved"), handedOver.row("  of it until the journal begins"),
                written.row("  of it until it is written and synced"), sent.row("  of it until the subscriber has it"),
                plain.row("plain Python script, which keeps nothing")).forEach(each -> report.line("%s", each));
        double floor = commit.ms(0.99) + roundTrip.ms(0.99);
        report.line("p99 %.3f ms, %.2f times the floor of %.3f ms; without the tracker's quiet time of %.1f ms: %.2f times"
                        + " (bar 1.5)", whole.ms(0.99), whole.ms(0.99) / floor, floor, QUIET_MS,
                (whole.ms(0.99) - QUIET_MS) / floor);
    }
}
