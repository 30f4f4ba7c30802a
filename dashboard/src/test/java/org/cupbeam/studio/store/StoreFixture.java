package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** An empty store for each test, whichever database it lives in, and ways to fill it and to look into it. */
public abstract class StoreFixture {
    protected static final Instant NOW = Instant.parse("2026-11-25T19:00:00Z");

    protected Database database;
    protected Store store;
    protected Keeper keeper;

    protected abstract Database database();

    @BeforeEach
    void open() {
        database = database();
        store = Store.open(database);
        keeper = new Keeper(store);
    }

    @AfterEach
    void close() {
        store.close();
    }

    protected void commit(Event... events) {
        keeper.commit(batch(Arrays.stream(events).map(event -> arrival(event, NOW)).toList()));
    }

    protected static Batch batch(List<Arrival> arrivals) {
        return new Batch(arrivals, List.of(), List.of());
    }

    protected static Arrival arrival(Event event, Instant received) {
        return new Arrival(event.source(), event.sequence(), event.time(), event, null, ScriptedLane.json(event), received);
    }

    protected int count(String table) {
        return store.read(h -> h.createQuery("SELECT count(*) FROM " + table).mapTo(Integer.class).one());
    }

    protected Map<String, Object> one(String sql) {
        List<Map<String, Object>> rows = all(sql);
        assertThat(rows).hasSize(1);
        return rows.get(0);
    }

    protected List<Map<String, Object>> all(String sql) {
        List<Map<String, Object>> rows = store.read(h -> h.createQuery(sql).mapToMap().list());
        rows.forEach(row -> row.replaceAll((column, value) -> smallest(value)));
        return rows;
    }

    /** The two databases differ in the type that a whole number comes back as. */
    private static Object smallest(Object value) {
        return value instanceof Long number && number.intValue() == number ? (Object) number.intValue() : value;
    }
}
