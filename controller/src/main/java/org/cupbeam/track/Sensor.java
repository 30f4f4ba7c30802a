package org.cupbeam.track;

/**
 * One channel's edges, gathered into pulses by their time stamps alone.
 *
 * <p>A receiver may chatter while a ball's limb crosses its threshold. So a pulse is over only once it has been quiet for
 * {@link #QUIET_NS}. It runs from the first edge of the chatter at its begin to the first edge of that at its end: whatever
 * delays one then delays the other, and its length stays right.
 *
 * <pre>
 *   CLEAR --rise--> BLOCKED --fall--> CLEARING --quiet--> CLEAR (one pulse more in the history)
 *                      ^-----------rise----'
 * </pre>
 */
final class Sensor {
    /** A gap shorter than this is chatter. Balls are at least this far apart at any speed that a putt has. */
    static final long QUIET_NS = 1_500_000;
    /** Never. */
    static final long NEVER = Long.MAX_VALUE;
    private static final int HISTORY = 8;

    private final long shortestNs;
    private final long flickerNs;
    private final long[] onNs = new long[HISTORY];
    private final long[] offNs = new long[HISTORY];
    private int pulses;
    private boolean active;
    private boolean open;
    private long openedNs;
    private long roseNs;
    private long clearedNs;
    private long quietNs;

    /**
     * @param shortestNs pulses shorter than this are ignored
     * @param flickerNs  what is blocked for less than this, after a pulse, is chatter at its end
     */
    Sensor(long shortestNs, long flickerNs) {
        this.shortestNs = shortestNs;
        this.flickerNs = flickerNs;
    }

    /** Takes an edge; the caller has closed what was due before it. */
    void edge(boolean nowActive, long timeNs) {
        if (nowActive == active) {
            return;
        }
        active = nowActive;
        if (nowActive) {
            if (!open) {
                open = true;
                openedNs = timeNs;
                clearedNs = timeNs;
            }
            roseNs = timeNs;
        } else {
            if (timeNs - roseNs >= flickerNs || clearedNs == openedNs) {
                clearedNs = timeNs;
            }
            quietNs = timeNs;
        }
    }

    /** When the open pulse may be taken as over; {@link #NEVER} while blocked or clear. */
    long closesNs() {
        return open && !active ? quietNs + QUIET_NS : NEVER;
    }

    /** Ends the open pulse. True if it was long enough to be one, and is now {@link #lastOnNs()}. */
    boolean close() {
        open = false;
        if (clearedNs - openedNs < shortestNs) {
            return false;
        }
        onNs[pulses % HISTORY] = openedNs;
        offNs[pulses % HISTORY] = clearedNs;
        pulses++;
        return true;
    }

    long lastOnNs() {
        return onNs[(pulses - 1) % HISTORY];
    }

    long lastOffNs() {
        return offNs[(pulses - 1) % HISTORY];
    }

    /** Whether a pulse has begun that is not known to be over. */
    boolean isOpen() {
        return open;
    }

    /** Since when it has been blocked without a break; {@link #NEVER} if it is not. */
    long blockedSinceNs() {
        return open && active ? openedNs : NEVER;
    }

    /** Whether a pulse, or the block that still lasts, touches this time. */
    boolean blockedWithin(long fromNs, long toNs) {
        if (open && openedNs <= toNs && (active ? Math.max(clearedNs, toNs) : clearedNs) >= fromNs
                && (active || clearedNs - openedNs >= shortestNs)) {
            return true;
        }
        for (int i = Math.max(0, pulses - HISTORY); i < pulses; i++) {
            if (onNs[i % HISTORY] <= toNs && offNs[i % HISTORY] >= fromNs) {
                return true;
            }
        }
        return false;
    }

    /** The start of the first pulse, open or over, that began within this time; {@link #NEVER} if none. */
    long firstOnWithin(long fromNs, long toNs) {
        for (int i = Math.max(0, pulses - HISTORY); i < pulses; i++) {
            if (onNs[i % HISTORY] >= fromNs && onNs[i % HISTORY] <= toNs) {
                return onNs[i % HISTORY];
            }
        }
        return open && openedNs >= fromNs && openedNs <= toNs ? openedNs : NEVER;
    }

    /** The end of the pulse that began then; {@link #NEVER} if it still lasts. */
    long endOf(long beganNs) {
        for (int i = Math.max(0, pulses - HISTORY); i < pulses; i++) {
            if (onNs[i % HISTORY] == beganNs) {
                return offNs[i % HISTORY];
            }
        }
        return NEVER;
    }
}
