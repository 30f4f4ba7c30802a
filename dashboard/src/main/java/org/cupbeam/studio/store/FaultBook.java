package org.cupbeam.studio.store;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.cupbeam.event.Health;
import org.cupbeam.event.Topics;
import org.jdbi.v3.core.Handle;

/**
 * Writes down what lanes say is wrong with their rigs: when each fault began and when it was over. A lane that is gone
 * cannot say that its faults are over, so they end with it. One thread calls it.
 */
public final class FaultBook {
    /** Words for a lane whose connection broke. */
    public static final String LOST = "the lane cannot be reached";
    private static final int MOST_LANES = 2_000;

    private final Store store;
    private final Map<Topics, Set<String>> said = new HashMap<>();
    private final Map<Topics, Long> connections = new HashMap<>();

    public FaultBook(Store store) {
        this.store = store;
    }

    /**
     * A lane has said how it is. Touches the store only where something has changed.
     *
     * @param atMs now
     */
    public void heard(Topics lane, Health health, long atMs) {
        if (late(lane, health) || said.size() >= MOST_LANES && !said.containsKey(lane)) {
            return;
        }
        Map<String, String> now = faults(health);
        if (now.keySet().equals(said.get(lane)) || !store.isLookedThrough()) { // boards wait behind; it is said again
            return;
        }
        store.writing(h -> laneId(h, lane).ifPresent(id -> {
            turnTo(h, id, now, atMs);
            said.put(lane, now.keySet());
        }));
    }

    /** Another host has written here meanwhile. */
    public void forget() {
        said.clear();
    }

    /** A last will of an earlier connection than the one that is there says nothing any more. */
    private boolean late(Topics lane, Health health) {
        long known = connections.getOrDefault(lane, Long.MIN_VALUE);
        boolean late = health.state() == Health.State.LOST && health.connection() < known;
        if (health.state() == Health.State.ONLINE) {
            connections.put(lane, health.connection());
        }
        return late;
    }

    private static Map<String, String> faults(Health health) {
        Map<String, String> bySign = new LinkedHashMap<>();
        List<String> words = health.state() == Health.State.LOST ? List.of(LOST)
                : health.report() == null ? List.of() : health.report().faults();
        words.forEach(each -> bySign.putIfAbsent(each.replaceAll("\\d+", "#"), each));
        return bySign;
    }

    private void turnTo(Handle h, int lane, Map<String, String> now, long atMs) {
        List<String> open = h.select("SELECT sign FROM fault WHERE lane_id = ? AND ended_ms IS NULL", lane)
                .mapTo(String.class).list();
        for (String sign : open) {
            if (!now.containsKey(sign)) {
                h.execute("UPDATE fault SET ended_ms = ? WHERE lane_id = ? AND ended_ms IS NULL AND sign = ?", atMs,
                        lane, sign);
            }
        }
        now.forEach((sign, words) -> {
            if (!open.contains(sign)) {
                h.execute("INSERT INTO fault (id, lane_id, sign, words, began_ms) VALUES (?, ?, ?, ?, ?)",
                        store.next(h, "fault"), lane, sign, words, atMs);
            }
        });
    }

    /** Lanes come into the store with their first event; before that nothing of theirs is kept. */
    private static Optional<Integer> laneId(Handle h, Topics lane) {
        return h.select("SELECT l.id FROM lane l JOIN studio s ON s.id = l.studio_id WHERE s.name = ? AND l.name = ?",
                lane.studio(), lane.lane()).mapTo(Integer.class).findOne();
    }
}
