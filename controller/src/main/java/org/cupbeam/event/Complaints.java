package org.cupbeam.event;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * Tells of messages that make no sense: a few lines a minute, however many come, so that whoever sends them cannot fill
 * a disk with what is said of them, nor hide another's among them. One thread calls it.
 */
public final class Complaints {
    /** The most lines a minute about one topic, and about all. */
    static final int MOST_OF_ONE = 5;
    static final int MOST_OF_ALL = 30;
    private static final int MOST_TOPICS = 64;
    private static final int LONGEST = 300;
    private static final long MINUTE_NS = 60_000_000_000L;

    private final LongSupplier nanoTime;
    private final Consumer<String> say;
    private final Map<String, Integer> told = new LinkedHashMap<>();
    private long sinceNs;
    private int lines;
    private long untold;

    /**
     * @param nanoTime a monotonic clock, ns
     * @param say      takes a line
     */
    public Complaints(LongSupplier nanoTime, Consumer<String> say) {
        this.nanoTime = nanoTime;
        this.say = say;
        this.sinceNs = nanoTime.getAsLong();
    }

    /** Something is wrong with a message of a topic. @return whether that was told */
    public boolean about(String topic, String what) {
        look();
        int ofThis = told.getOrDefault(topic, 0);
        boolean known = told.containsKey(topic) || told.size() < MOST_TOPICS;
        if (!known || ofThis >= MOST_OF_ONE || lines >= MOST_OF_ALL) {
            untold++;
            return false;
        }
        told.put(topic, ofThis + 1);
        lines++;
        String line = topic + ": " + what;
        say.accept(line.length() <= LONGEST ? line : line.substring(0, LONGEST) + "…");
        return true;
    }

    /** Sums up a minute that is over; to be called now and then. */
    public void look() {
        long now = nanoTime.getAsLong();
        if (now - sinceNs < MINUTE_NS) {
            return;
        }
        if (untold > 0) {
            say.accept(untold + " more messages made no sense in the last minute; is something making them up?");
        }
        sinceNs = now;
        lines = 0;
        untold = 0;
        told.clear();
    }
}
