package org.cupbeam.studio.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One live stream and all who watch it. Whatever is said is put into bytes once, however many watch; of each kind of
 * event the latest is kept, so that whoever comes, or comes back, has the whole state at once.
 */
final class Stream {
    /** Somebody watching. */
    interface Watcher {
        /** Hands a frame over without waiting. @return false when the watcher is gone, or so slow as to be let go */
        boolean offer(byte[] frame);

        /** Lets the watcher go. */
        void end();
    }

    private final String born;
    private final Map<String, byte[]> latest = new LinkedHashMap<>();
    private final Set<Watcher> watchers = ConcurrentHashMap.newKeySet();
    private long said;
    private boolean over;

    /** @param born tells the ids of one start of the host from those of another */
    Stream(String born) {
        this.born = born;
    }

    /** Says something whose latest word whoever comes later must have. */
    synchronized void say(String event, byte[] json) {
        byte[] frame = Frame.of(nextId(), event, json);
        latest.put(event, frame);
        send(frame);
    }

    /** Says something of this moment only. */
    synchronized void mention(String event, byte[] json) {
        send(Frame.of(nextId(), event, json));
    }

    /** From now on the watcher has everything, the state as it is first. */
    synchronized void join(Watcher watcher) {
        if (over) {
            watcher.end();
            return;
        }
        List<byte[]> state = new ArrayList<>();
        state.add(Frame.hello());
        state.addAll(latest.values());
        if (state.stream().allMatch(watcher::offer)) {
            watchers.add(watcher);
        }
    }

    void leave(Watcher watcher) {
        watchers.remove(watcher);
    }

    /** Lets everybody go: the host stops. */
    void end() {
        List<Watcher> all;
        synchronized (this) {
            over = true;
            all = List.copyOf(watchers);
        }
        all.forEach(Watcher::end);
    }

    int watchers() {
        return watchers.size();
    }

    private void send(byte[] frame) {
        watchers.removeIf(watcher -> !watcher.offer(frame));
    }

    private String nextId() {
        return born + "-" + ++said;
    }
}
