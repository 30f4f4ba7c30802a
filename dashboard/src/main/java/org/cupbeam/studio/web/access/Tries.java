package org.cupbeam.studio.web.access;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How soon the next try at the PIN may be made. Each address has a few tries, then waits that double; and all addresses
 * together have some more, then waits as well, so that many addresses do not help. An address that has once signed in is
 * spared the common wait: whoever tries to guess cannot keep staff out.
 */
public final class Tries {
    private static final Limit EACH = new Limit(5, Duration.ofMinutes(15), Duration.ofHours(6));
    private static final Limit ALL = new Limit(20, Duration.ofSeconds(30), Duration.ofMinutes(15));
    private static final int MOST_ADDRESSES = 4_096;

    /** So many are free, then waits double from 1 s to the longest; forgotten after a quiet spell. */
    private record Limit(int free, Duration longest, Duration forgotten) {
    }

    private static final class Count {
        private int tries;
        private Instant last = Instant.MIN;
        private boolean known;

        Duration wait(Limit limit, Instant now) {
            if (tries > 0 && last.plus(limit.forgotten()).isBefore(now)) {
                tries = 0;
            }
            if (tries < limit.free()) {
                return Duration.ZERO;
            }
            long seconds = 1L << Math.min(20, tries - limit.free());
            Duration pause = Duration.ofSeconds(Math.min(seconds, limit.longest().toSeconds()));
            Duration left = Duration.between(now, last.plus(pause));
            return left.isNegative() ? Duration.ZERO : left;
        }

        void add(Instant now) {
            tries++;
            last = now;
        }
    }

    private final InstantSource clock;
    private final Count all = new Count();
    private final Map<String, Count> each = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Count> eldest) {
            return size() > MOST_ADDRESSES;
        }
    };

    public Tries(InstantSource clock) {
        this.clock = clock;
    }

    /**
     * Asks for a try, before the PIN is looked at. A try that may be made counts as failed until {@link #succeeded}, so
     * that many made at once are counted as well.
     *
     * @return how long to wait before asking again; zero when the try may be made
     */
    public synchronized Duration ask(String address) {
        Instant now = clock.instant();
        Count own = each.computeIfAbsent(group(address), a -> new Count());
        Duration wait = own.wait(EACH, now);
        Duration common = own.known ? Duration.ZERO : all.wait(ALL, now);
        if (wait.isZero() && common.isZero()) {
            own.add(now);
            if (!own.known) {
                all.add(now);
            }
            return Duration.ZERO;
        }
        return wait.compareTo(common) > 0 ? wait : common;
    }

    /** The try of this address was right. */
    public synchronized void succeeded(String address) {
        Count own = each.computeIfAbsent(group(address), a -> new Count());
        if (!own.known && all.tries > 0) {
            all.tries--;
        }
        own.tries = 0;
        own.known = true;
    }

    /** An IPv6 network of 64 bits is one household: it counts as one address. */
    private static String group(String address) {
        if (address.indexOf(':') < 0) {
            return address;
        }
        try {
            byte[] bytes = InetAddress.getByName(address).getAddress();
            return bytes.length == 16 ? Arrays.toString(Arrays.copyOf(bytes, 8)) : Arrays.toString(bytes);
        } catch (UnknownHostException e) {
            return address;
        }
    }
}
