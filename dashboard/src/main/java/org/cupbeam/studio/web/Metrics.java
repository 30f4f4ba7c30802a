package org.cupbeam.studio.web;

import io.prometheus.metrics.model.snapshots.ClassicHistogramBuckets;
import io.prometheus.metrics.model.snapshots.CounterSnapshot;
import io.prometheus.metrics.model.snapshots.CounterSnapshot.CounterDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot.GaugeDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.HistogramSnapshot;
import io.prometheus.metrics.model.snapshots.HistogramSnapshot.HistogramDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.Labels;
import io.prometheus.metrics.model.snapshots.MetricSnapshots;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import org.cupbeam.event.Health;
import org.cupbeam.event.Health.State;
import org.cupbeam.studio.ingest.Vitals;

/**
 * The host in numbers. There are no more series than lanes are known ({@link LiveLanes}) times three and some forty: no
 * player's or drill's name is a label.
 */
final class Metrics {
    private final LiveLanes lanes;
    private volatile Supplier<Vitals> vitals = () -> null;

    Metrics(LiveLanes lanes) {
        this.lanes = lanes;
    }

    /** How the ingest is asked. */
    void ask(Supplier<Vitals> how) {
        vitals = how;
    }

    /** Why nothing can be kept at present, in words; null while all is well. */
    String trouble() {
        Vitals now = vitals.get();
        return now == null ? null : now.trouble();
    }

    MetricSnapshots now() {
        MetricSnapshots.Builder all = MetricSnapshots.builder();
        Vitals now = vitals.get();
        if (now != null) {
            ingest(all, now);
        }
        lanes(all, lanes.all().stream().filter(LiveLane::heard).toList());
        ProcessMetrics.addTo(all);
        return all.build();
    }

    private static void ingest(MetricSnapshots.Builder all, Vitals now) {
        all.metricSnapshot(counter("cupbeam_events_kept", "Events kept by this host, those that came again among them", now.kept()))
                .metricSnapshot(counter("cupbeam_events_missing", "Events that lanes could no longer send", now.missing()))
                .metricSnapshot(counter("cupbeam_messages_refused", "Messages that made no sense", now.refused()))
                .metricSnapshot(counter("cupbeam_messages_let_go", "Messages that found no room; their lanes send them again",
                        now.letGo()))
                .metricSnapshot(gauge("cupbeam_messages_waiting", "Messages that wait to be kept", now.waiting()))
                .metricSnapshot(gauge("cupbeam_broker_reached", "1 while the broker is connected", now.reachesBroker() ? 1 : 0))
                .metricSnapshot(gauge("cupbeam_keeps_events", "1 while this host keeps the events, and not another",
                        now.keeps() ? 1 : 0))
                .metricSnapshot(gauge("cupbeam_store_takes_events", "0 while the store takes nothing, for want of room perhaps",
                        now.trouble() == null ? 1 : 0))
                .metricSnapshot(HistogramSnapshot.builder().name("cupbeam_commit_seconds")
                        .help("Until a batch of events was kept for good").dataPoint(commits(now)).build());
    }

    private static HistogramDataPointSnapshot commits(Vitals now) {
        double[] limits = Vitals.limitsS();
        ClassicHistogramBuckets.Builder buckets = ClassicHistogramBuckets.builder();
        for (int i = 0; i < limits.length; i++) {
            buckets.bucket(limits[i], now.commits()[i]);
        }
        buckets.bucket(Double.POSITIVE_INFINITY, now.commits()[limits.length]);
        return HistogramDataPointSnapshot.builder().classicHistogramBuckets(buckets.build()).sum(now.commitS()).build();
    }

    private void lanes(MetricSnapshots.Builder all, List<LiveLane> known) {
        GaugeSnapshot.Builder states = GaugeSnapshot.builder().name("cupbeam_lanes").help("Lanes by what they are");
        Arrays.stream(State.values()).forEach(state -> states.dataPoint(point(Labels.of("state",
                state.name().toLowerCase(Locale.ROOT)), known.stream().filter(lane -> is(lane, state)).count())));
        all.metricSnapshot(states.build());
        all.metricSnapshot(gauge("cupbeam_boards_open", "Boards and lists of lanes that are watched", lanes.watchers()));
        List<LiveLane> reporting = known.stream().filter(lane -> lane.health() != null && lane.health().report() != null).toList();
        all.metricSnapshot(ofEach(reporting, "cupbeam_lane_outbox_events", "Events that a lane still has to get stored",
                report -> report.outbox()));
        all.metricSnapshot(ofEach(reporting, "cupbeam_lane_faults", "What needs somebody at a lane",
                report -> report.faults().size()));
        CounterSnapshot.Builder dropped = CounterSnapshot.builder().name("cupbeam_lane_edges_dropped")
                .help("Edges that found a lane's queue full, since its start");
        reporting.forEach(lane -> dropped.dataPoint(CounterDataPointSnapshot.builder().labels(labels(lane))
                .value(lane.health().report().edgesDropped()).build()));
        all.metricSnapshot(dropped.build());
    }

    private static GaugeSnapshot ofEach(List<LiveLane> lanes, String name, String help, ToDoubleFunction<Health.Report> value) {
        GaugeSnapshot.Builder gauge = GaugeSnapshot.builder().name(name).help(help);
        lanes.forEach(lane -> gauge.dataPoint(point(labels(lane), value.applyAsDouble(lane.health().report()))));
        return gauge.build();
    }

    private static boolean is(LiveLane lane, State state) {
        return lane.health() != null && lane.health().state() == state;
    }

    private static Labels labels(LiveLane lane) {
        return Labels.of("studio", lane.topics().studio(), "lane", lane.topics().lane());
    }

    static CounterSnapshot counter(String name, String help, double value) {
        return CounterSnapshot.builder().name(name).help(help)
                .dataPoint(CounterDataPointSnapshot.builder().value(value).build()).build();
    }

    static GaugeSnapshot gauge(String name, String help, double value) {
        return GaugeSnapshot.builder().name(name).help(help).dataPoint(point(Labels.EMPTY, value)).build();
    }

    private static GaugeDataPointSnapshot point(Labels labels, double value) {
        return GaugeDataPointSnapshot.builder().labels(labels).value(value).build();
    }
}
