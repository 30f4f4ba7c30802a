package org.cupbeam.studio.web.access;

import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Base64;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** Who is signed in: known by an id that only their browser and this process have, and that no page can read. */
public final class Sessions {
    /** Without a request for so long, a session ends; and after so long in any case. */
    static final Duration IDLE = Duration.ofHours(12);
    static final Duration LONGEST = Duration.ofDays(7);
    private static final int MOST = 256;
    private static final int SECRET_BYTES = 32;

    /**
     * Somebody signed in.
     *
     * @param token   what a page of ours sends along with whatever changes something
     * @param who     the name that corrections carry
     * @param account the number of who signed in by name; 0 for whoever came by the PIN
     * @param stamp   of what it was opened with; another PIN, secret or role ends it
     */
    public record Session(String id, String token, String who, int account, String stamp) {
    }

    private static final class Held {
        private final Session session;
        private final Instant opened;
        private Instant seen;

        Held(Session session, Instant now) {
            this.session = session;
            this.opened = now;
            this.seen = now;
        }

        boolean over(Instant now) {
            return seen.plus(IDLE).isBefore(now) || opened.plus(LONGEST).isBefore(now);
        }
    }

    private final SecureRandom random;
    private final InstantSource clock;
    private final Map<String, Held> held = new LinkedHashMap<>(16, 0.75f, true);

    public Sessions(SecureRandom random, InstantSource clock) {
        this.random = random;
        this.clock = clock;
    }

    /** A new session, under an id that nobody had before. */
    public synchronized Session open(String who, int account, String stamp) {
        Instant now = clock.instant();
        held.values().removeIf(each -> each.over(now));
        Iterator<Held> longestUnseen = held.values().iterator();
        if (held.size() >= MOST) {
            longestUnseen.next();
            longestUnseen.remove();
        }
        Session session = new Session(secret(), secret(), who, account, stamp);
        held.put(session.id(), new Held(session, now));
        return session;
    }

    /** The session of an id, where it is one that goes on, by its age and by what it was opened with. */
    public synchronized Optional<Session> find(String idOrNull, Predicate<Session> goesOn) {
        Held found = idOrNull == null ? null : held.get(idOrNull);
        if (found == null) {
            return Optional.empty();
        }
        Instant now = clock.instant();
        if (found.over(now) || !goesOn.test(found.session)) {
            held.remove(idOrNull);
            return Optional.empty();
        }
        found.seen = now;
        return Optional.of(found.session);
    }

    /** For how long the sessions of somebody who signed in by name have not asked for anything, of each. */
    public synchronized List<Duration> unseen(int account) {
        Instant now = clock.instant();
        return held.values().stream().filter(each -> each.session.account() == account && !each.over(now))
                .map(each -> Duration.between(each.seen, now)).sorted().toList();
    }

    /** Ends one; any id will do. */
    public synchronized void close(String idOrNull) {
        held.remove(idOrNull);
    }

    private String secret() {
        byte[] bytes = new byte[SECRET_BYTES];
        random.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }
}
