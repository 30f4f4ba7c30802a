package org.cupbeam.studio.web;

import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.Topics;

/** One lane as it is now. */
final class LiveLane {
    private final Topics topics;
    private final Stream stream;
    private volatile Score score;
    private volatile Health health;
    private volatile long healthNs;

    LiveLane(Topics topics, Stream stream) {
        this.topics = topics;
        this.stream = stream;
    }

    Topics topics() {
        return topics;
    }

    Stream stream() {
        return stream;
    }

    /** Null until it is first heard. */
    Score score() {
        return score;
    }

    /** Null until it is first heard. */
    Health health() {
        return health;
    }

    /** For how long it has said nothing of its health, s. */
    double healthAgoS() {
        return (System.nanoTime() - healthNs) * 1e-9;
    }

    boolean heard() {
        return score != null || health != null;
    }

    /** Takes a score. @return whether the list of lanes has to say something else now */
    boolean score(Score now) {
        boolean other = score == null || score.state() != now.state();
        score = now;
        return other;
    }

    /**
     * Takes what a lane says of itself, or the broker of it. @return false for the will of an earlier connection, which
     * says nothing about the one that stands
     */
    boolean health(Health now) {
        boolean late = now.state() == Health.State.LOST && health != null && now.connection() < health.connection();
        if (!late) {
            healthNs = System.nanoTime();
            health = now;
        }
        return !late;
    }

    LiveLanes.Listed listed() {
        return new LiveLanes.Listed(topics.studio(), topics.lane(),
                health == null ? "unheard" : health.state().word(), score == null ? "idle" : score.state().word());
    }
}
