package org.cupbeam.studio.store.staff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.StoreFixture;
import org.junit.jupiter.api.Test;

/** Who signs in by name, as the store keeps it. */
public abstract class StaffBookBehaviour extends StoreFixture {
    private static final Scope MILL = Scope.of(List.of("mill"));

    @Test
    void isKeptAsItWasGiven() {
        Account ada = add("Ada", Role.OWNER, Scope.ALL);
        Account carl = add("Carl", Role.COACH, Scope.of(List.of("quay", "mill")));

        assertThat(store.<List<Account>>read(StaffBook::all)).containsExactly(ada, carl);
        assertThat(carl.scope().text()).isEqualTo("mill quay");
        assertThat(store.<Optional<Account>>read(h -> StaffBook.named(h, " cARL"))).contains(carl);
        assertThat(ada).hasToString("Account[1, Ada, OWNER, Scope[isAll=true, studios=[]]]");
    }

    @Test
    void theFirstAndTheLastAreOwnersOfAll() {
        refused(() -> add("Carl", Role.COACH, Scope.ALL), "has to be an owner of all studios");
        refused(() -> add("Carl", Role.OWNER, MILL), "has to be an owner of all studios");
        Account ada = add("Ada", Role.OWNER, Scope.ALL);
        Account carl = add("Carl", Role.COACH, MILL);

        refused(() -> change(ada, Role.COACH, Scope.ALL), "only owner of all studios");
        refused(() -> change(ada, Role.OWNER, MILL), "only owner of all studios");
        refused(() -> takeAway(ada), "only owner of all studios");
        takeAway(carl);
        takeAway(ada);
        refused(() -> store.write(h -> StaffBook.putBack(h, Scope.ALL, carl.id(), "x", 9)), "has to be an owner of all studios");
        assertThat(store.write(h -> StaffBook.putBack(h, Scope.ALL, ada.id(), "x", 9)).secret()).isEqualTo("hash of Ada");
    }

    @Test
    void aNameIsOnePersonsWhoIsThere() {
        add("Ada", Role.OWNER, Scope.ALL);
        Account carl = add("Carl", Role.COACH, MILL);
        refused(() -> add("CARL", Role.DESK, MILL), "signs in as");
        takeAway(carl);
        add("Carl", Role.DESK, MILL);

        refused(() -> store.write(h -> StaffBook.putBack(h, Scope.ALL, carl.id(), "x", 9)), "signs in as");
    }

    @Test
    void whatTellsASessionToEndIsAnotherWithEachChange() {
        add("Ada", Role.OWNER, Scope.ALL);
        Account carl = add("Carl", Role.COACH, MILL);
        Account desk = change(carl, Role.DESK, MILL);
        Account wider = change(carl, Role.DESK, Scope.ALL);
        Account secret = store.write(h -> StaffBook.secret(h, Scope.ALL, carl.id(), "another", "x", 5));

        assertThat(List.of(carl.stamp(), desk.stamp(), wider.stamp(), secret.stamp())).doesNotHaveDuplicates();
    }

    @Test
    void whoIsNotThereIsNotThere() {
        add("Ada", Role.OWNER, Scope.ALL);

        assertThatThrownBy(() -> store.write(h -> StaffBook.secret(h, Scope.ALL, 9, "x", "x", 5))).isInstanceOf(NoSuchElementException.class);
        assertThatThrownBy(() -> store.write(h -> StaffBook.putBack(h, Scope.ALL, 1, "x", 5))).isInstanceOf(NoSuchElementException.class);
    }

    @Test
    void whoeverLooksAfterMoreIsNotThereForThoseWhoLookAfterLess() {
        add("Ada", Role.OWNER, Scope.ALL);
        Account carl = add("Carl", Role.COACH, Scope.of(List.of("quay", "mill")));

        assertThatThrownBy(() -> store.write(h -> StaffBook.change(h, MILL, carl.id(), Role.DESK, MILL, "x", 5))).isInstanceOf(NoSuchElementException.class);
        assertThatThrownBy(() -> store.write(h -> StaffBook.secret(h, MILL, carl.id(), "x", "x", 5))).isInstanceOf(NoSuchElementException.class);
        assertThatThrownBy(() -> store.write(h -> StaffBook.takeAway(h, MILL, carl.id(), "x", 5))).isInstanceOf(NoSuchElementException.class);
        takeAway(carl);
        assertThatThrownBy(() -> store.write(h -> StaffBook.putBack(h, MILL, carl.id(), "x", 5))).isInstanceOf(NoSuchElementException.class);
        assertThat(store.write(h -> StaffBook.putBack(h, carl.scope(), carl.id(), "x", 5)).name()).isEqualTo("Carl");
    }

    private Account add(String name, Role role, Scope scope) {
        return store.write(h -> StaffBook.add(h, name, "hash of " + name, role, scope, "Kim", 1));
    }

    private Account change(Account account, Role role, Scope scope) {
        return store.write(h -> StaffBook.change(h, Scope.ALL, account.id(), role, scope, "Kim", 2));
    }

    private void takeAway(Account account) {
        store.writing(h -> StaffBook.takeAway(h, Scope.ALL, account.id(), "Kim", 3));
    }

    private static void refused(Runnable change, String words) {
        assertThatThrownBy(change::run).isInstanceOf(IllegalArgumentException.class).hasMessageContaining(words);
    }
}
