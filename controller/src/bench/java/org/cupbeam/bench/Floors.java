package org.cupbeam.bench;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** What the disk and the broker take by themselves for what a lane does with them. */
final class Floors implements AutoCloseable {
    static final String TOPIC = "floor/event";
    /** As long as an attempt's event. */
    private static final byte[] PAYLOAD = new byte[800];
    /** As long as what a lane's play is told of it. */
    private static final String TOLD = "-".repeat(90);

    private final Connection database;
    private final PreparedStatement event;
    private final PreparedStatement input;
    private final PreparedStatement about;
    private long number;
    private final MqttAsyncClient publisher;

    Floors(Path folder, Broker broker) throws SQLException, MqttException {
        database = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("floor.db"));
        try (Statement statement = database.createStatement()) {
            for (String each : new String[] {"PRAGMA locking_mode = EXCLUSIVE", "PRAGMA journal_mode = WAL",
                "PRAGMA synchronous = FULL", "PRAGMA wal_autocheckpoint = 2000", "CREATE TABLE about (stored INTEGER NOT NULL) STRICT",
                "CREATE TABLE event (sequence INTEGER PRIMARY KEY, payload BLOB NOT NULL) STRICT",
                "CREATE TABLE input (number INTEGER PRIMARY KEY, body TEXT) STRICT", "INSERT INTO about VALUES (0)"}) {
                statement.execute(each);
            }
        }
        database.setAutoCommit(false);
        event = database.prepareStatement("INSERT INTO event (payload) VALUES (?)");
        input = database.prepareStatement("INSERT INTO input (body) VALUES (?)");
        about = database.prepareStatement("UPDATE about SET stored = ?");
        publisher = new MqttAsyncClient(broker.uri(), "bench-floor", new MemoryPersistence());
        publisher.connect().waitForCompletion();
    }

    /** Such rows as a lane writes of an attempt, committed by SQLite with the settings of a lane's journal. */
    long commitNs() throws SQLException {
        event.setBytes(1, PAYLOAD);
        input.setString(1, TOLD);
        about.setLong(1, number++);
        long before = System.nanoTime();
        event.executeUpdate();
        input.executeUpdate();
        about.executeUpdate();
        database.commit();
        return System.nanoTime() - before;
    }

    /** Empties SQLite's log, which is written over from its begin then, as a lane's journal does now and then. */
    void tidy() throws SQLException {
        try (Statement statement = database.createStatement()) {
            statement.execute("PRAGMA wal_checkpoint(PASSIVE)");
        }
        database.commit();
    }

    /** One message from a publisher to a subscriber. */
    long roundTripNs(Subscriber subscriber) throws MqttException, InterruptedException {
        long before = System.nanoTime();
        publisher.publish(TOPIC, PAYLOAD, 1, false);
        return subscriber.await(each -> each.topic().equals(TOPIC)).atNs() - before;
    }

    @Override
    public void close() throws SQLException, MqttException {
        database.close();
        publisher.disconnectForcibly(0, 1_000);
        publisher.close();
    }
}
