package org.cupbeam.studio.web.access;

import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.cupbeam.studio.store.NameKey;
import org.cupbeam.studio.store.staff.Account;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Who may sign in by name, as the store has it. It is asked with every request, so it is remembered for a second; another
 * host at the same store is believed as soon. While the store cannot be read, what was read last holds.
 */
public final class Roster {
    private static final Logger LOG = LoggerFactory.getLogger(Roster.class);
    private static final long FRESH_NS = 1_000_000_000L;

    private record Read(List<Account> all, long atNs) {
    }

    private final Supplier<List<Account>> store;
    private final LongSupplier nanoTime;
    private volatile Read last;

    /** @param store gives those who are there now */
    public Roster(Supplier<List<Account>> store, LongSupplier nanoTime) {
        this.store = store;
        this.nanoTime = nanoTime;
    }

    /** Whether nobody signs in by name, but all by the PIN. */
    public boolean isEmpty() {
        return all().isEmpty();
    }

    public List<Account> all() {
        Read now = last;
        return (now == null || nanoTime.getAsLong() - now.atNs() > FRESH_NS ? readAfter(now) : now).all();
    }

    public Optional<Account> named(String name) {
        String key = NameKey.of(name);
        return all().stream().filter(each -> NameKey.of(each.name()).equals(key)).findFirst();
    }

    public Optional<Account> numbered(int id) {
        return all().stream().filter(each -> each.id() == id).findFirst();
    }

    /** Somebody was changed here: whoever asks next is told of it, whatever another thread has just begun to read. */
    public synchronized void changed() {
        read();
    }

    private synchronized Read readAfter(Read before) {
        if (last == before) {
            read();
        }
        return last;
    }

    private void read() {
        Read before = last;
        long now = nanoTime.getAsLong();
        try {
            last = new Read(List.copyOf(store.get()), now);
        } catch (RuntimeException e) {
            if (before == null) {
                throw e;
            }
            LOG.warn("who may sign in cannot be read, and holds as it was: {}", e.toString());
            last = new Read(before.all(), now);
        }
    }
}
