package org.cupbeam.studio.coach;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import org.cupbeam.studio.store.PuttsVersion;

/** Portraits of late, as many as so many bytes hold; those that were not asked for longest go first. */
final class Memory {
    private record Known(PuttsVersion version, Portrait portrait) {
    }

    private final long bytesMax;
    private final Map<Asked, Known> byAsked = new LinkedHashMap<>(16, 0.75f, true);
    private long bytes;

    Memory(long bytesMax) {
        this.bytesMax = bytesMax;
    }

    /** What is known of that version; null where nothing is. */
    synchronized Portrait recall(Asked asked, PuttsVersion version) {
        Known known = byAsked.get(asked);
        return known != null && known.version.equals(version) ? known.portrait : null;
    }

    /** Puts it in place of what was known of the same; one that is larger than all that may be held is let go at once. */
    synchronized void keep(Asked asked, PuttsVersion version, Portrait portrait) {
        Known before = byAsked.put(asked, new Known(version, portrait));
        bytes += portrait.bytes() - (before == null ? 0 : before.portrait.bytes());
        Iterator<Known> eldestFirst = byAsked.values().iterator();
        while (bytes > bytesMax) {
            bytes -= eldestFirst.next().portrait.bytes();
            eldestFirst.remove();
        }
    }

    /** What it holds, by {@link Portrait#bytes}. */
    synchronized long bytes() {
        return bytes;
    }
}
