package org.cupbeam.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
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
    /** A frame of SQLite's write-ahead log: a page and its head. */
    private static final int FRAME = 4096 + 24;
    /** As long as an attempt's event. */
    private static final byte[] PAYLOAD = new byte[900];

    private final FileChannel file;
    private final ByteBuffer frames = ByteBuffer.allocateDirect(3 * FRAME);
    private final Connection database;
    private final PreparedStatement insert;
    private final MqttAsyncClient publisher;

    Floors(Path folder, Broker broker) throws IOException, SQLException, MqttException {
        file = FileChannel.open(folder.resolve("floor.raw"), StandardOpenOption.CREATE, StandardOpenOption.WRITE,
                StandardOpenOption.TRUNCATE_EXISTING);
        database = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("floor.db"));
        try (Statement statement = database.createStatement()) {
            for (String each : new String[] {"PRAGMA locking_mode = EXCLUSIVE", "PRAGMA journal_mode = WAL",
                "PRAGMA synchronous = FULL", "CREATE TABLE row (number INTEGER PRIMARY KEY, payload BLOB) STRICT"}) {
                statement.execute(each);
            }
        }
        insert = database.prepareStatement("INSERT INTO row (payload) VALUES (?)");
        publisher = new MqttAsyncClient(broker.uri(), "bench-floor", new MemoryPersistence());
        publisher.connect().waitForCompletion();
    }

    /** Three frames appended to a file, and that on the disk. */
    long syncNs() throws IOException {
        frames.clear();
        long before = System.nanoTime();
        file.write(frames);
        file.force(false);
        return System.nanoTime() - before;
    }

    /** One row committed by SQLite, with the settings of a lane's journal. */
    long commitNs() throws SQLException {
        insert.setBytes(1, PAYLOAD);
        long before = System.nanoTime();
        insert.executeUpdate();
        return System.nanoTime() - before;
    }

    /** One message from a publisher to a subscriber. */
    long roundTripNs(Subscriber subscriber) throws MqttException, InterruptedException {
        long before = System.nanoTime();
        publisher.publish(TOPIC, PAYLOAD, 1, false);
        return subscriber.await(each -> each.topic().equals(TOPIC)).atNs() - before;
    }

    @Override
    public void close() throws IOException, SQLException, MqttException {
        file.close();
        database.close();
        publisher.disconnectForcibly(0, 1_000);
        publisher.close();
    }
}
