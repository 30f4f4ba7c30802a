package org.cupbeam.journal;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Source;

/**
 * The durable log: what was appended is on the disk when {@link #append} returns, whole, in order, or an exception
 * says that none of it is. One process and one connection; safe to use from several threads, one after the other.
 *
 * @param <I> the play's inputs
 */
public final class Journal<I> implements Outbox, AutoCloseable {
    /** How many events that the host has stored are kept nevertheless, for a host that loses its store. */
    public static final int KEPT = 10_000;
    /** How many commands' answers are remembered. */
    public static final int ANSWERS = 256;
    private static final String CONNECTION = "journal.connection";

    private final Claim claim;
    private final Database database;
    private final Path movedAside;
    private final Source source;
    private final InputCodec<I> codec;
    private Rows<I> rows;
    private volatile long last;
    private volatile long stored;
    private volatile long left;
    private final LeftBehind leftBehind;
    private long storedOnDisk;

    private Journal(Claim claim, Opening.Opened opened, String studio, String lane, InputCodec<I> codec)
            throws SQLException {
        this.claim = claim;
        this.database = opened.database();
        this.movedAside = opened.movedAside();
        this.source = new Source(studio, lane, database.text("SELECT journal FROM about"));
        this.codec = codec;
        this.rows = new Rows<>(database.connection(), source, codec);
        this.last = database.number("SELECT coalesce(max(sequence), 0) FROM event");
        this.storedOnDisk = database.number("SELECT stored FROM about");
        this.stored = storedOnDisk;
        this.leftBehind = new LeftBehind(database);
        this.left = leftBehind.count();
    }

    /**
     * Opens a journal, or begins one where there is none.
     *
     * @param file   its file; others of the same name with a suffix stand beside it
     * @param now    for the name of a damaged file moved aside
     * @throws JournalException for a file that is in use, another program's, a later version's, or not to be written
     */
    public static <I> Journal<I> open(Path file, String studio, String lane, InputCodec<I> codec, Instant now)
            throws JournalException {
        Claim claim = Claim.on(file);
        try {
            return new Journal<>(claim, Opening.open(file, now), studio, lane, codec);
        } catch (SQLException e) {
            release(claim, e);
            throw Database.failure(file, e);
        } catch (JournalException e) {
            release(claim, e);
            throw e;
        }
    }

    private static void release(Claim claim, Exception because) {
        try {
            claim.close();
        } catch (IOException e) {
            because.addSuppressed(e);
        }
    }

    @Override
    public String id() {
        return source.journal();
    }

    /** Where this journal's events come from. */
    public Source source() {
        return source;
    }

    /** Where a damaged file was moved to when this journal began; something for somebody to look at. */
    public Optional<Path> movedAside() {
        return Optional.ofNullable(movedAside);
    }

    /** Writes an entry; returns the sequence of the last event on the disk, when it is there. */
    public long append(Entry<I> entry) throws JournalException {
        return append(List.of(entry));
    }

    /** Writes several entries at once, all or none, at the price of one. */
    public synchronized long append(List<Entry<I>> entries) throws JournalException {
        long storedNow = stored;
        try {
            long reached = database.transaction(() -> {
                long sequence = last;
                for (Entry<I> entry : entries) {
                    sequence = rows.write(entry, sequence);
                }
                rows.keepStored(storedNow);
                return sequence;
            });
            storedOnDisk = storedNow;
            last = reached;
            return reached;
        } catch (SQLException e) {
            throw failure(e);
        }
    }

    /** What the play was told since the last reset, in order. */
    public synchronized List<I> inputs() throws JournalException {
        try {
            return rows.inputs();
        } catch (SQLException e) {
            throw failure(e);
        } catch (IllegalArgumentException e) {
            throw new JournalException(JournalException.Kind.DAMAGED, source + ": holds an input that makes no sense ("
                    + e.getMessage() + "); move the journal away", e);
        }
    }

    /** A small thing remembered. */
    public synchronized Optional<String> state(String key) throws JournalException {
        try {
            return rows.state(key);
        } catch (SQLException e) {
            throw failure(e);
        }
    }

    /** The answer given to a command, if it is one of the last {@link #ANSWERS}. */
    public synchronized Optional<Answer> answer(String commandId) throws JournalException {
        try {
            return rows.answer(commandId);
        } catch (SQLException e) {
            throw failure(e);
        }
    }

    @Override
    public long last() {
        return last;
    }

    @Override
    public long stored() {
        return stored;
    }

    /** {@inheritDoc} It reaches the disk with the next entry, or on closing: until then a crash costs repeats only. */
    @Override
    public boolean stored(long sequence) {
        if (sequence < 0 || sequence > last) {
            return false;
        }
        stored = sequence;
        return true;
    }

    @Override
    public synchronized List<Row> after(long sequence, int max) throws JournalException {
        try {
            return rows.after(sequence, max);
        } catch (SQLException e) {
            throw failure(e);
        }
    }

    @Override
    public long left() {
        return left;
    }

    @Override
    public synchronized List<Row> leftBehind(int max) throws JournalException {
        try {
            return leftBehind.oldest(max);
        } catch (SQLException e) {
            throw failure(e);
        }
    }

    @Override
    public synchronized void storedOf(String journal, long sequence) throws JournalException {
        if (left == 0) {
            return;
        }
        try {
            left = database.transaction(() -> {
                leftBehind.forget(journal, sequence);
                return leftBehind.count();
            });
        } catch (SQLException e) {
            throw failure(e);
        }
    }

    @Override
    public synchronized long nextConnection() throws JournalException {
        long next = state(CONNECTION).map(Long::parseLong).orElse(0L) + 1;
        append(Entry.<I>empty().with(CONNECTION, Long.toString(next)));
        return next;
    }

    /** What can wait for a quiet moment: forgets what is stored and old, and empties the write-ahead log. */
    public synchronized void tidy() throws JournalException {
        try {
            long oldest = Math.min(stored, last - KEPT);
            database.transaction(() -> {
                rows.forget(oldest);
                rows.keepStored(stored);
                return null;
            });
            storedOnDisk = stored;
            database.checkpoint();
        } catch (SQLException e) {
            throw failure(e);
        }
    }

    /** In words; and with fresh statements, since the driver gives up those that a full disk failed. */
    private JournalException failure(SQLException e) {
        try {
            rows.close();
            rows = new Rows<>(database.connection(), source, codec);
        } catch (SQLException again) {
            e.addSuppressed(again);
        }
        return database.failure(e);
    }

    Database database() {
        return database;
    }

    /** Closes the file; whatever was appended is on the disk already. */
    @Override
    public synchronized void close() throws JournalException {
        try (claim; database) {
            if (stored != storedOnDisk) {
                append(List.of());
            }
            rows.close();
        } catch (SQLException e) {
            throw database.failure(e);
        } catch (IOException e) {
            throw new JournalException(JournalException.Kind.FAILED, source + ": " + e, e);
        }
    }
}
