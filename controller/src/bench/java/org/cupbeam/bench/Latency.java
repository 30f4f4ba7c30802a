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
    private static final int WARM_UP = 300;
    private static final int TIMES = 1_000;
    /** Before the disk's own sync as long as before the lane's. */
    private static final long REST_NS = HoledPutt.IN_CUP_NS;
    private static final int TIDY_AFTER = 250;
    private static final double QUIET_MS = PuttedLane.QUIET_NS / 1e6;
    private static final Pattern DECIDED = Pattern.compile("\"decided_ns\": (\\d+)");

    private final Report report;
    private final Path folder;
    private final Broker broker;

    private Latency(Report report, Path folder, Broker broker) {
        this.report = report;
        this.folder = folder;
        this.broker = broker;
    }

    static void measure(Report report) throws Exception {
        Optional<Broker> found = Broker.start(report);
        if (found.isPresent()) {
            try (Broker broker = found.get()) {
                new Latency(report, Files.createTempDirectory(report.file("."), "latency"), broker).measure();
            }
        }
    }

    private void measure() throws Exception {
        report.title("Deciding edge to event at a subscriber, the journal synced on the way");
        try (Subscriber host = new Subscriber(broker, PuttedLane.TOPICS.event(), Floors.TOPIC);
             Floors floors = new Floors(folder, broker);
             PuttedLane lane = new PuttedLane(PracticeRigs.STANDARD.level(), folder.resolve("lane.db"), broker, host)) {
            new Turns(host, floors, lane).take(WARM_UP);
            Turns turns = new Turns(host, floors, lane);
            turns.take(TIMES);
            turns.tell(report);
        }
        if (Yardstick.isThere(report)) {
            report.line("%s", yardstick().row("plain Python script, which keeps nothing"));
        }
    }

    /** The lane and its floors in turn. */
    private static final class Turns {
        private final Subscriber host;
        private final Floors floors;
        private final PuttedLane lane;
        private final Samples commit = new Samples();
        private final Samples roundTrip = new Samples();
        private final Samples whole = new Samples();
        private final Samples resolved = new Samples();
        private final Samples handedOver = new Samples();
        private final Samples written = new Samples();
        private final Samples sent = new Samples();

        Turns(Subscriber host, Floors floors, PuttedLane lane) {
            this.host = host;
            this.floors = floors;
            this.lane = lane;
        }

        void take(int times) throws Exception {
            for (int i = 0; i < times; i++) {
                if (i % TIDY_AFTER == 0) {
                    floors.tidy();
                    lane.rest();
                }
                TimeUnit.NANOSECONDS.sleep(REST_NS);
                commit.add(floors.commitNs());
                roundTrip.add(floors.roundTripNs(host));
                PuttedLane.Took took = lane.putt();
                whole.add(took.wholeNs());
                resolved.add(took.resolvedNs());
                handedOver.add(took.handedOverNs());
                written.add(took.writtenNs());
                sent.add(took.sentNs());
            }
        }

        void tell(Report report) {
            report.line("%s", Samples.head());
            List.of(commit.row("the disk's own: the same rows, by SQLite"),
                    roundTrip.row("the broker's own: publisher to subscriber"),
                    whole.row("a lane: edge to event"), resolved.row("  of it until the attempt is resolved"),
                    handedOver.row("  of it until the journal begins"),
                    written.row("  of it until it is written and synced"),
                    sent.row("  of it until the subscriber has it")).forEach(each -> report.line("%s", each));
            double floor = commit.ms(0.99) + roundTrip.ms(0.99);
            report.line("p99 is %.2f times the floor's %.3f ms, and without the tracker's quiet time of %.1f ms %.2f times"
                    + " (bar 1.5)", whole.ms(0.99) / floor, floor, QUIET_MS, (whole.ms(0.99) - QUIET_MS) / floor);
        }
    }

    private Samples yardstick() throws Exception {
        Rig rig = PracticeRigs.STANDARD.level();
        Path trace = folder.resolve("putt.vcd");
        try (OutputStream out = Files.newOutputStream(trace); VcdWriter writer = new VcdWriter(out, rig, 0, Instant.EPOCH)) {
            HoledPutt.play(HoledPutt.edges(rig), 1_000_000, writer);
        }
        Samples plain = new Samples();
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
        return plain;
    }
}
