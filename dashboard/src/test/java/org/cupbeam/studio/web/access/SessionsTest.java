package org.cupbeam.studio.web.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.Set;
import java.util.function.Predicate;
import org.cupbeam.studio.web.access.Sessions.Session;
import org.junit.jupiter.api.Test;

class SessionsTest {
    private Instant now = Instant.EPOCH;
    private final Sessions sessions = new Sessions(new SecureRandom(), () -> now);

    @Test
    void isFoundByItsIdAlone() {
        Session kim = sessions.open("Kim", 0, "pin-1");

        assertThat(sessions.find(kim.id(), with("pin-1"))).contains(kim);
        assertThat(sessions.find(kim.token(), with("pin-1"))).isEmpty();
        assertThat(sessions.find("", with("pin-1"))).isEmpty();
        assertThat(sessions.find(null, with("pin-1"))).isEmpty();
    }

    @Test
    void neitherIdNorTokenComesTwice() {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < 500; i++) {
            Session each = sessions.open("Kim", 0, "pin-1");
            assertThat(seen.add(each.id()) & seen.add(each.token())).isTrue();
            assertThat(each.id()).hasSizeGreaterThanOrEqualTo(43);
        }
    }

    @Test
    void anotherPinEndsIt() {
        Session kim = sessions.open("Kim", 0, "pin-1");

        assertThat(sessions.find(kim.id(), with("pin-2"))).isEmpty();
        assertThat(sessions.find(kim.id(), with("pin-1"))).as("for good").isEmpty();
    }

    @Test
    void endsWhenNobodyUsesIt() {
        Session kim = sessions.open("Kim", 0, "pin-1");
        now = now.plus(Sessions.IDLE);
        assertThat(sessions.find(kim.id(), with("pin-1"))).isPresent();
        now = now.plus(Sessions.IDLE).plusSeconds(1);

        assertThat(sessions.find(kim.id(), with("pin-1"))).isEmpty();
    }

    @Test
    void endsInTheLongRunHoweverItIsUsed() {
        Session kim = sessions.open("Kim", 0, "pin-1");
        for (Duration age = Duration.ZERO; age.compareTo(Sessions.LONGEST) < 0; age = age.plusHours(6)) {
            assertThat(sessions.find(kim.id(), with("pin-1"))).isPresent();
            now = now.plus(Duration.ofHours(6));
        }
        now = now.plusSeconds(1);

        assertThat(sessions.find(kim.id(), with("pin-1"))).isEmpty();
    }

    @Test
    void ofTooManyTheLongestUnusedGoes() {
        Session first = sessions.open("Kim", 0, "pin-1");
        Session second = sessions.open("Lou", 0, "pin-1");
        for (int i = 0; i < 254; i++) {
            sessions.open("many", 0, "pin-1");
        }
        sessions.find(first.id(), with("pin-1"));
        sessions.open("one more", 0, "pin-1");

        assertThat(sessions.find(first.id(), with("pin-1"))).isPresent();
        assertThat(sessions.find(second.id(), with("pin-1"))).isEmpty();
    }

    @Test
    void isOverOnceClosed() {
        Session kim = sessions.open("Kim", 0, "pin-1");
        sessions.close(kim.id());

        assertThat(sessions.find(kim.id(), with("pin-1"))).isEmpty();
    }

    @Test
    void tellsWhoOfThoseWithANameIsSignedIn() {
        sessions.open("Kim", 7, "a");
        now = now.plusSeconds(60);
        sessions.open("Kim", 7, "a");
        sessions.open("Lou", 8, "b");

        assertThat(sessions.unseen(7)).containsExactly(Duration.ZERO, Duration.ofSeconds(60));
        assertThat(sessions.unseen(9)).isEmpty();
        now = now.plus(Sessions.IDLE);
        assertThat(sessions.unseen(7)).as("one has been idle for too long").hasSize(1);
    }

    private static Predicate<Session> with(String stamp) {
        return session -> session.stamp().equals(stamp);
    }
}
