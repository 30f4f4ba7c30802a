package org.cupbeam.studio.web.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.staff.Account;
import org.cupbeam.studio.store.staff.Role;
import org.junit.jupiter.api.Test;

class RosterTest {
    private final List<Account> kept = new ArrayList<>(List.of(account(1, "Ada")));
    private int asked;
    private boolean broken;
    private long nowNs;
    private final Roster roster = new Roster(() -> {
        asked++;
        if (broken) {
            throw new IllegalStateException("the store is away");
        }
        return kept;
    }, () -> nowNs);

    @Test
    void isReadOnceASecondHoweverOftenItIsAsked() {
        for (int i = 0; i < 1_000; i++) {
            assertThat(roster.isEmpty()).isFalse();
            nowNs += 999_999;
        }

        assertThat(asked).isEqualTo(1);
        nowNs += 10_000_000;
        roster.all();
        assertThat(asked).isEqualTo(2);
    }

    @Test
    void knowsWhatAnotherHostChangedWithinASecondAndWhatWasChangedHereAtOnce() {
        roster.all();
        kept.clear();
        assertThat(roster.numbered(1)).isPresent();
        nowNs += 1_000_000_001;
        assertThat(roster.numbered(1)).isEmpty();
        kept.add(account(2, "Bea"));
        roster.changed();

        assertThat(roster.named(" BEA ")).map(Account::id).contains(2);
    }

    /** Another request may have begun to read before the change, and be done just before. */
    @Test
    void whatWasChangedHereIsKnownEvenIfAnotherReadBeforeIt() {
        roster.all();
        nowNs += 2_000_000_000;
        roster.all();
        kept.clear();
        roster.changed();

        assertThat(roster.isEmpty()).isTrue();
        assertThat(asked).isEqualTo(3);
    }

    @Test
    void whileTheStoreIsAwayWhatWasReadLastHolds() {
        roster.all();
        broken = true;
        nowNs += 2_000_000_000;

        assertThat(roster.named("Ada")).isPresent();
    }

    @Test
    void whereNothingWasEverReadNobodyIsLetInForWant() {
        broken = true;

        assertThatThrownBy(roster::isEmpty).hasMessage("the store is away");
    }

    private static Account account(int id, String name) {
        return new Account(id, name, "hash", Role.OWNER, Scope.ALL, 0, "x", 0);
    }
}
