package org.cupbeam.studio.ingest;

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.LongSupplier;
import java.util.function.ToLongFunction;
import org.cupbeam.event.Source;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Makes batches of messages: puts each source's events in order, and sets aside what makes no sense. */
final class Sorter {
    /** The most journals that are followed. */
    static final int MOST_SOURCES = 2_000;
    /** The most events of one source that are held while a gap is open. */
    static final int MOST_HELD = 128;

    private static final Duration LOOK_EVERY = Duration.ofSeconds(1);

    private static final Logger LOG = LoggerFactory.getLogger(Sorter.class);

    private final EventReader reader;
    private final Clock wall;
    private final LongSupplier nanoTime;
    private final Map<Source, Sequencer<Arrival>> sources = new HashMap<>();
    private final ToLongFunction<Source> keptNow;
    private final Patience patience;
    private final Map<Source, Long> looked = new HashMap<>();
    private final Set<Source> touched = new LinkedHashSet<>();
    private final List<Arrival> arrivals = new ArrayList<>();
    private final List<Batch.Missing> missing = new ArrayList<>();
    private final List<Batch.DeadLetter> deadLetters = new ArrayList<>();

    /** @param keptNow up to where a source is kept, asked where something seems to be missing */
    Sorter(List<EventLog.Kept> kept, ToLongFunction<Source> keptNow, Patience patience, Clock wall, LongSupplier nanoTime) {
        this.keptNow = keptNow;
        this.patience = patience;
        this.reader = new EventReader(wall);
        this.wall = wall;
        this.nanoTime = nanoTime;
        kept.forEach(each -> sources.put(each.source(), new Sequencer<>(each.upTo(), MOST_HELD)));
    }

    /** Takes a message of an event topic. */
    void take(Message message) {
        try {
            Arrival arrival = reader.read(message);
            Sequencer<Arrival> sequencer = sequencer(arrival.source());
            if (arrival.sequence() > sequencer.last() + 1) {
                lookElsewhere(arrival.source(), sequencer);
            }
            arrivals.addAll(sequencer.offer(arrival.sequence(), arrival, nanoTime.getAsLong()));
            touched.add(arrival.source());
        } catch (Refused e) {
            LOG.warn("{}: {}", message.topic(), e.getMessage());
            deadLetters.add(new Batch.DeadLetter(message.topic(), e.getMessage(), message.payload(), wall.instant()));
        }
    }

    /** A lane that sent to another host for a while has had its events kept there: they will not come here. */
    private void lookElsewhere(Source source, Sequencer<Arrival> sequencer) {
        long nowNs = nanoTime.getAsLong();
        Long before = looked.get(source);
        if (before != null && nowNs - before < LOOK_EVERY.toNanos()) {
            return;
        }
        looked.put(source, nowNs);
        try {
            arrivals.addAll(sequencer.keptUpTo(keptNow.applyAsLong(source)));
        } catch (RuntimeException e) {
            LOG.debug("the store cannot be asked what is kept of {}", source, e);
        }
    }

    /** Notes that a source exists, so that its lane is told how far it is kept. */
    void heardOf(Source source) {
        try {
            sequencer(source);
            touched.add(source);
        } catch (Refused e) {
            LOG.warn("{}: {}", source, e.getMessage());
        }
    }

    /** Gives up gaps that nobody will fill. */
    void giveUpOverdue() {
        long nowNs = nanoTime.getAsLong();
        sources.forEach((source, sequencer) -> {
            Duration wait = sequencer.last() == 0 ? patience.atFirst() : patience.later();
            sequencer.overdue(nowNs, wait.toNanos(), patience.knocks()).ifPresent(gap -> {
                LOG.warn("{}: events {} to {} were never sent; going on without them", source, gap.from(), gap.to());
                missing.add(new Batch.Missing(source, gap.from(), gap.to(), wall.instant()));
                arrivals.addAll(sequencer.skip());
                touched.add(source);
            });
        });
    }

    /** Everything sorted since the last time. */
    Batch batch() {
        Batch batch = new Batch(arrivals, missing, deadLetters);
        arrivals.clear();
        missing.clear();
        deadLetters.clear();
        return batch;
    }

    /** The sources heard of since the last time. */
    List<Source> touched() {
        List<Source> all = List.copyOf(touched);
        touched.clear();
        return all;
    }

    /** Whether anything waits for what lies before it. */
    boolean holdsAny() {
        return sources.values().stream().anyMatch(each -> each.held() > 0);
    }

    /** The number up to which everything of a source was given out in batches; 0 for none. */
    long upTo(Source source) {
        Sequencer<Arrival> sequencer = sources.get(source);
        return sequencer == null ? 0 : sequencer.last();
    }

    private Sequencer<Arrival> sequencer(Source source) throws Refused {
        if (!sources.containsKey(source) && sources.size() >= MOST_SOURCES) {
            throw new Refused("more than " + MOST_SOURCES + " journals are known; is something making them up?");
        }
        return sources.computeIfAbsent(source, s -> new Sequencer<>(0, MOST_HELD));
    }
}
