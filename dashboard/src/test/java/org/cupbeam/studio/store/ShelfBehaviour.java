package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Stations;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;
import org.cupbeam.studio.store.Shelf.Kept;
import org.cupbeam.studio.store.Shelf.Objection;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The shelf of drills, whichever database it lies in. */
abstract class ShelfBehaviour {
    private Store store;

    abstract Database database();

    @BeforeEach
    void open() {
        store = Store.open(database());
    }

    @AfterEach
    void close() {
        store.close();
    }

    @Test
    void givesBackWhatWasPutOnInOrderOfNames() {
        add(drill("Steep", 3));
        add(drill("long way", 2));

        assertThat(all()).extracting(Kept::drill).containsExactly(drill("long way", 2), drill("Steep", 3));
        assertThat(find(1)).contains(new Kept(1, drill("Steep", 3), 1, "Kim", 1_000, Scope.ALL));
    }

    @Test
    void takesNoTwoDrillsOfOneName() {
        add(drill("Steep", 3));

        assertThat(add(drill("  STEEP ", 5)).objection()).isEqualTo(Objection.NAME_TAKEN);
        int other = add(drill("Flat", 3)).kept().id();
        assertThat(change(other, 1, drill("steep", 3)).objection()).isEqualTo(Objection.NAME_TAKEN);
        assertThat(change(other, 1, drill("FLAT", 4)).kept().version()).as("its own name").isEqualTo(2);
    }

    @Test
    void twoWhoChangeADrillDoNotUndoOneAnothers() {
        int id = add(drill("Steep", 3)).kept().id();

        assertThat(change(id, 1, drill("Steep", 4)).kept().version()).isEqualTo(2);
        assertThat(change(id, 1, drill("Steep", 9)).objection()).isEqualTo(Objection.CHANGED_SINCE);
        assertThat(takeOff(id)).isFalse();
        assertThat(find(id).orElseThrow().drill().balls()).isEqualTo(4);
    }

    @Test
    void whatWasTakenOffCanBePutBack() {
        int id = add(drill("Steep", 3)).kept().id();
        assertThat(takeOff(id)).isTrue();
        assertThat(all()).isEmpty();
        assertThat(change(id, 1, drill("Steep", 4)).objection()).isEqualTo(Objection.CHANGED_SINCE);

        assertThat(putBack(id).kept().drill()).isEqualTo(drill("Steep", 3));
        assertThat(putBack(id).objection()).as("it is there").isEqualTo(Objection.CHANGED_SINCE);
    }

    @Test
    void isNotPutBackBesideAnotherOfItsName() {
        int id = add(drill("Steep", 3)).kept().id();
        takeOff(id);
        add(drill("Steep", 5));

        assertThat(putBack(id).objection()).isEqualTo(Objection.NAME_TAKEN);
    }

    @Test
    void passesOverADrillThatOnlyALaterVersionUnderstands() {
        add(drill("Steep", 3));
        store.writing(h -> h.execute("INSERT INTO shelf_drill (id, name_key, terms, version, changed_by, changed_ms) "
                + "VALUES (7, 'new', '{\"name\": \"new\"}', 1, 'Kim', 0)"));

        assertThat(all()).extracting(Kept::id).containsExactly(1);
    }

    @Test
    void holdsSoManyAndNoMore() {
        store.writing(h -> {
            for (int i = 0; i < Shelf.MOST; i++) {
                Shelf.add(h, drill("No " + i, 1), "Kim", 0);
            }
        });

        assertThat(add(drill("One more", 1)).objection()).isEqualTo(Objection.FULL);
    }

    private List<Kept> all() {
        return store.read(Shelf::all);
    }

    private Optional<Kept> find(int id) {
        return store.read(h -> Shelf.find(h, id));
    }

    private boolean takeOff(int id) {
        return store.write(h -> Shelf.takeOff(h, id, 1, 2_000));
    }

    private Shelf.Change putBack(int id) {
        return store.write(h -> Shelf.putBack(h, id));
    }

    private Shelf.Change add(Drill drill) {
        return store.write(h -> Shelf.add(h, drill, "Kim", 1_000));
    }

    private Shelf.Change change(int id, int version, Drill drill) {
        return store.write(h -> Shelf.change(h, id, version, drill, "Lou", 2_000));
    }

    private static Drill drill(String name, int balls) {
        return new Drill(name, new Stations.Ladder(914.4, 914.4, 5), balls, Supply.EVERY_STATION, 1,
                OptionalDouble.empty(), Penalty.NONE, Turns.STATION);
    }
}
