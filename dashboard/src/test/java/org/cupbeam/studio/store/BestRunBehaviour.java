package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.cupbeam.event.Event;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Which run is the one to beat, whichever database it is asked of. */
abstract class BestRunBehaviour {
    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private Store store;
    private Keeper keeper;
    private int runs;

    abstract Database database();

    @BeforeEach
    void open() {
        store = Store.open(database());
        keeper = new Keeper(store);
    }

    @AfterEach
    void close() {
        store.close();
    }

    @Test
    void isNoneWhereNoneWasPlayed() {
        assertThat(best(ScriptedLane.TAGS)).isEmpty();
    }

    @Test
    void isTheOneThatClearedMostStations() {
        run("Ada", 4, 20, 4, 300);
        run("Bo", 5, 40, 5, 900);
        assertThat(best(ScriptedLane.TAGS)).map(BestRun::player).contains("Bo");
    }

    @Test
    void isTheOneWithFewerAttemptsOfThoseThatAreLevel() {
        run("Ada", 4, 20, 4, 300);
        run("Bo", 4, 19, 4, 900);
        assertThat(best(ScriptedLane.TAGS)).map(BestRun::player).contains("Bo");
    }

    @Test
    void isTheOneWithNearerMissesOfThoseThatAreLevelStill() {
        run("Unknown", 4, 20, 4, Double.NaN);
        run("Far", 4, 20, 4, 900);
        run("Near", 4, 20, 4, 300);
        assertThat(best(ScriptedLane.TAGS)).map(BestRun::player).contains("Near");
    }

    @Test
    void countsNoMissesAsTheNearest() {
        run("Near", 4, 4, 3, 1);
        run("None", 4, 4, 4, Double.NaN);
        assertThat(best(ScriptedLane.TAGS)).map(BestRun::player).contains("None");
    }

    @Test
    void staysTheFirstOfThoseThatAreLevelInAll() {
        run("First", 4, 20, 4, 300);
        lane.passes(60);
        run("Second", 4, 20, 4, 300);
        assertThat(best(ScriptedLane.TAGS)).map(BestRun::player).contains("First");
    }

    @Test
    void isOnlyAmongRunsOfTheSameTags() {
        run("Ada", 4, 20, 4, 300);
        assertThat(best(Tags.NONE)).isEmpty();
        assertThat(best(new Tags(Tags.Break.LEFT_TO_RIGHT, null))).isEmpty();
    }

    @Test
    void isNoneThatIsStillGoingOn() {
        commit(lane.starts("going", null, "Ada", 1), lane.holes("going", null, "Ada", 1));
        assertThat(best(ScriptedLane.TAGS)).isEmpty();
    }

    private void run(String player, int cleared, int attempts, int holed, double meanMissMm) {
        String id = "r" + ++runs;
        commit(lane.starts(id, null, player, 1), lane.ends(id, null, player, cleared, attempts, holed, meanMissMm));
    }

    private Optional<BestRun> best(Tags tags) {
        return store.read(h -> BestRun.of(h, "home", ScriptedLane.LADDER, tags));
    }

    private void commit(Event... events) {
        List<Arrival> arrivals = Arrays.stream(events).map(event -> new Arrival(event.source(), event.sequence(),
                event.time(), event, null, ScriptedLane.json(event), Instant.EPOCH)).toList();
        keeper.commit(new Batch(arrivals, List.of(), List.of()));
    }
}
