package org.cupbeam.studio.ingest;

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.LongSupplier;
import java.util.function.ToLongFunction;
import org.cupbeam.event.Complaints;
import org.cupbeam.event.Source;
import org.cupbeam.event.Topics;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Makes batches of messages: puts each source's events in order, and sets aside what makes no sense. */
final class Sorter {
    /** The most journals that are followed. */
    static final int MOST_SOURCES = 2_000;
    /** The most journals of one lane: it has a new one only when its card is new or damaged. */
    static final int MOST_OF_A_LANE = 64;
    /** The most that all sources together hold while gaps are open. */
    static final long MOST_HELD_BYTES = 4 << 20;
    /** The most messages a minute that are set aside; more are told of alone. */
    static final int MOST_SET_ASIDE = 100;
    /** The most events among those that have come again that are compared with what is kept, between two commits. */
    static final int MOST_COMPARED = 64;
    private static final byte[] NOTHING = {};
    private static final long MINUTE_NS = Duration.ofMinutes(1).toNanos();
    /** The most events of one source that are held while a gap is open. */
    static final int MOST_HELD = 128;

    private static final Duration LOOK_EVERY = Duration.ofSeconds(1);

    private static final Logger LOG = LoggerFactory.getLogger(Sorter.class);

    private final EventReader reader;
    private final Clock wall;
    private final LongSupplier nanoTime;
    private final Complaints complaints;
    private final Map<Topics, Integer> journals = new HashMap<>();
    private final List<Arrival> again = new ArrayList<>();
    private final Map<Source, Sequencer<Arrival>> sources = new HashMap<>();
    private final ToLongFunction<Source> keptNow;
    private final Patience patience;
    private final Map<Source, Long> looked = new HashMap<>();
    private final Set<Source> touched = new LinkedHashSet<>();
    private final List<Arrival> arrivals = new ArrayList<>();
    private final List<Batch.Missing> missing = new ArrayList<>();
    private final List<Batch.DeadLetter> deadLetters = new ArrayList<>();
    /** Of all sources together, kept as it changes: with many lanes behind gaps nobody could add it up for each event. */
    private long heldBytes;
    private long minuteNs;
    private int setAside;

    /** @param keptNow up to where a source is kept, asked where something seems to be missing */
    Sorter(List<EventLog.Kept> kept, ToLongFunction<Source> keptNow, Patience patience, Clock wall, LongSupplier nanoTime) {
        this.keptNow = keptNow;
        this.patience = patience;
        this.reader = new EventReader(wall);
        this.wall = wall;
        this.nanoTime = nanoTime;
        this.complaints = new Complaints(nanoTime, LOG::warn);
        this.minuteNs = nanoTime.getAsLong();
        kept.forEach(each -> follow(each.source(), each.upTo()));
    }

    /** Takes a message of an event topic. */
    void take(Message message) {
        try {
            Arrival arrival = reader.read(message);
            Sequencer<Arrival> sequencer = sequencer(arrival.source());
            if (arrival.sequence() > sequencer.last() + 1) {
                lookElsewhere(arrival.source(), sequencer);
            }
            put(arrival, sequencer);
            touched.add(arrival.source());
            if (arrival.problem() != null) {
                complaints.about(message.topic(), "an event is kept, but not understood: " + arrival.problem());
            }
        } catch (Refused e) {
            setAside(message.topic(), e.getMessage(), message.payload());
        }
    }

    private void put(Arrival arrival, Sequencer<Arrival> of) throws Refused {
        if (of.beyondBelief(arrival.sequence())) {
            throw new Refused("id: is " + arrival.sequence() + ", and the last that came was " + of.last()
                    + "; no lane is so far ahead");
        }
        if (of.isPast(arrival.sequence()) && again.size() < MOST_COMPARED) {
            again.add(arrival);
        }
        int before = of.held();
        arrivals.addAll(of.offer(arrival.sequence(), arrival, nanoTime.getAsLong()));
        if (of.held() > before && heldBytes > MOST_HELD_BYTES) {
            sources.values().stream().max(Comparator.comparingLong(Sequencer::heldBytes)).orElse(of).letGo(); // its lane sends it again
        }
    }

    /** What waits behind gaps, bytes. */
    long held() {
        return heldBytes;
    }

    /** Events whose numbers were given out before; to be compared with what is kept, once all of these are. */
    List<Arrival> again() {
        List<Arrival> all = List.copyOf(again);
        again.clear();
        return all;
    }

    /**
     * An event is kept already, and what came again under its name says something else. That is not set down: it may be
     * the name of somebody who has been forgotten since.
     */
    void differs(Arrival other) {
        setAside(lane(other.source()).event(), "id: " + other.sequence() + " of journal " + other.source().journal()
                + " is kept already, and says something else; the first one stays. Was a card copied?", NOTHING);
    }

    private void setAside(String topic, String reason, byte[] payload) {
        complaints.about(topic, reason);
        long now = nanoTime.getAsLong();
        if (now - minuteNs >= MINUTE_NS) {
            minuteNs = now;
            setAside = 0;
        }
        if (setAside++ < MOST_SET_ASIDE) {
            deadLetters.add(new Batch.DeadLetter(topic, reason, payload, wall.instant()));
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
            complaints.about(lane(source).health(), e.getMessage());
        }
    }

    /** Gives up gaps that nobody will fill. */
    void giveUpOverdue() {
        long nowNs = nanoTime.getAsLong();
        complaints.look();
        if (!holdsAny()) {
            return;
        }
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
        return heldBytes > 0;
    }

    /** The number up to which everything of a source was given out in batches; 0 for none. */
    long upTo(Source source) {
        Sequencer<Arrival> sequencer = sources.get(source);
        return sequencer == null ? 0 : sequencer.last();
    }

    private Sequencer<Arrival> sequencer(Source source) throws Refused {
        Sequencer<Arrival> known = sources.get(source);
        if (known != null) {
            return known;
        }
        if (sources.size() >= MOST_SOURCES) {
            throw new Refused("more than " + MOST_SOURCES + " journals are known; is something making them up?");
        }
        if (journals.getOrDefault(lane(source), 0) >= MOST_OF_A_LANE) {
            throw new Refused("source: more than " + MOST_OF_A_LANE + " journals of one lane are known; is something making "
                    + "them up?");
        }
        return follow(source, 0);
    }

    private Sequencer<Arrival> follow(Source source, long upTo) {
        Sequencer<Arrival> fresh = new Sequencer<>(upTo, MOST_HELD,
                new Early<>(arrival -> arrival.payload().length, change -> heldBytes += change));
        sources.put(source, fresh);
        journals.merge(lane(source), 1, Integer::sum);
        return fresh;
    }

    private static Topics lane(Source source) {
        return new Topics(source.studio(), source.lane());
    }
}
