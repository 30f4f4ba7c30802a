package org.cupbeam.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cupbeam.event.Answer;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Source;

/** The journal's statements. Transactions are the caller's. */
final class Rows<I> implements AutoCloseable {
    /** The most rows that one tidying takes away, so that it stays short. */
    private static final int FORGET_AT_ONCE = 2_000;

    private final Source source;
    private final InputCodec<I> codec;
    private final List<PreparedStatement> all = new ArrayList<>();
    private final PreparedStatement insertEvent;
    private final PreparedStatement selectEvents;
    private final PreparedStatement insertInput;
    private final PreparedStatement selectInputs;
    private final PreparedStatement putState;
    private final PreparedStatement selectState;
    private final PreparedStatement insertAnswer;
    private final PreparedStatement dropAnswers;
    private final PreparedStatement selectAnswer;
    private final PreparedStatement updateStored;

    Rows(Connection connection, Source source, InputCodec<I> codec) throws SQLException {
        this.source = source;
        this.codec = codec;
        insertEvent = prepare(connection, "INSERT INTO event (sequence, payload, check_sum) VALUES (?, ?, ?)");
        selectEvents = prepare(connection,
                "SELECT sequence, payload FROM event WHERE sequence > ? ORDER BY sequence LIMIT ?");
        insertInput = prepare(connection, "INSERT INTO input (reset, body) VALUES (?, ?)");
        selectInputs = prepare(connection, "SELECT body FROM input WHERE body IS NOT NULL AND number >= "
                + "(SELECT coalesce(max(number), 0) FROM input WHERE reset = 1) ORDER BY number");
        putState = prepare(connection, "INSERT INTO state (key, value) VALUES (?, ?) "
                + "ON CONFLICT (key) DO UPDATE SET value = excluded.value");
        selectState = prepare(connection, "SELECT value FROM state WHERE key = ?");
        insertAnswer = prepare(connection, "INSERT INTO answer (id, body) VALUES (?, ?) ON CONFLICT (id) DO NOTHING");
        dropAnswers = prepare(connection,
                "DELETE FROM answer WHERE number <= (SELECT max(number) FROM answer) - " + Journal.ANSWERS);
        selectAnswer = prepare(connection, "SELECT body FROM answer WHERE id = ?");
        updateStored = prepare(connection, "UPDATE about SET stored = ? WHERE stored <> ?");
    }

    private PreparedStatement prepare(Connection connection, String sql) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        all.add(statement);
        return statement;
    }

    /** @return the sequence reached */
    long write(Entry<I> entry, long last) throws SQLException {
        long sequence = last;
        for (Entry.Said said : entry.events()) {
            sequence++;
            insertEvent.setLong(1, sequence);
            byte[] payload = EventJson.encode(new Event(source, sequence, said.time(), said.data()));
            insertEvent.setBytes(2, payload);
            insertEvent.setString(3, CheckSum.of(payload));
            insertEvent.executeUpdate();
        }
        if (entry.reset() || entry.input() != null) {
            insertInput.setInt(1, entry.reset() ? 1 : 0);
            insertInput.setString(2, entry.input() == null ? null : codec.encode(entry.input()));
            insertInput.executeUpdate();
        }
        for (Map.Entry<String, String> each : entry.state().entrySet()) {
            putState.setString(1, each.getKey());
            putState.setString(2, each.getValue());
            putState.executeUpdate();
        }
        if (entry.answer() != null) {
            insertAnswer.setString(1, entry.answer().id());
            insertAnswer.setBytes(2, CommandJson.encode(entry.answer()));
            insertAnswer.executeUpdate();
            dropAnswers.executeUpdate();
        }
        return sequence;
    }

    void keepStored(long stored) throws SQLException {
        updateStored.setLong(1, stored);
        updateStored.setLong(2, stored);
        updateStored.executeUpdate();
    }

    List<Outbox.Row> after(long sequence, int max) throws SQLException {
        selectEvents.setLong(1, sequence);
        selectEvents.setInt(2, max);
        List<Outbox.Row> found = new ArrayList<>();
        try (ResultSet rows = selectEvents.executeQuery()) {
            while (rows.next()) {
                found.add(new Outbox.Row(rows.getLong(1), rows.getBytes(2)));
            }
        }
        return found;
    }

    List<I> inputs() throws SQLException {
        List<I> inputs = new ArrayList<>();
        try (ResultSet rows = selectInputs.executeQuery()) {
            while (rows.next()) {
                inputs.add(codec.decode(rows.getString(1)));
            }
        }
        return inputs;
    }

    Optional<String> state(String key) throws SQLException {
        selectState.setString(1, key);
        try (ResultSet rows = selectState.executeQuery()) {
            return rows.next() ? Optional.of(rows.getString(1)) : Optional.empty();
        }
    }

    Optional<Answer> answer(String id) throws SQLException {
        selectAnswer.setString(1, id);
        try (ResultSet rows = selectAnswer.executeQuery()) {
            return rows.next() ? Optional.of(CommandJson.decodeAnswer(rows.getBytes(1))) : Optional.empty();
        } catch (BadMessage e) {
            throw new SQLException("the answer to command " + id + " does not read: " + e.getMessage(), e);
        }
    }

    /** Forgets events up to a sequence, and inputs that a reset made void and that are as old. */
    void forget(long upToSequence) throws SQLException {
        run("DELETE FROM event WHERE sequence <= min(" + upToSequence
                + ", (SELECT min(sequence) FROM event) + " + FORGET_AT_ONCE + ")");
        run("DELETE FROM input WHERE number < (SELECT max(number) FROM input WHERE reset = 1) AND number <= min("
                + "(SELECT max(number) FROM input) - " + Journal.KEPT + ", (SELECT min(number) FROM input) + "
                + FORGET_AT_ONCE + ")");
    }

    private void run(String sql) throws SQLException {
        try (PreparedStatement statement = insertEvent.getConnection().prepareStatement(sql)) {
            statement.executeUpdate();
        }
    }

    @Override
    public void close() throws SQLException {
        for (PreparedStatement each : all) {
            each.close();
        }
    }
}
