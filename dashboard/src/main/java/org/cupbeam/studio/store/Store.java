package org.cupbeam.studio.store;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.cupbeam.studio.lease.Pen;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The open store: one connection that writes, a few that read. What is done in one call is one transaction. Where hosts share
 * a store, one of them writes at a time.
 *
 * <p>A large file is looked through for damage beside what reads it. Until that has found nothing, nothing is written: whoever
 * writes waits, and a lane keeps what it has.
 */
public final class Store implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Store.class);
    private static final int MOST_READERS = 4;
    private static final int VALID_WITHIN_S = 3;
    /** How long what queries are planned by may be out of date while something is written. */
    static final long TIDY_EVERY_NS = 3_600_000_000_000L;

    private final Database database;
    private final Look look;
    private final Readers readers;
    private final ReentrantLock writing = new ReentrantLock();
    private final Pen pen = new Pen();
    private final Numbers numbers = new Numbers();
    private final List<Runnable> memories = new ArrayList<>(List.of(numbers::forget));
    private final LongSupplier nanoTime;
    private Handle writer;
    private long tidiedNs;
    private boolean isTidied;
    private boolean isClosed;
    private volatile boolean isOutOfDate;

    private Store(Database database, LongSupplier nanoTime, Look look) {
        this.database = database;
        this.look = look;
        this.nanoTime = nanoTime;
        this.writer = openWriter();
        look.whenWhole(this::tidyAtFirst);
        this.readers = new Readers(Jdbi.create(database::reader), MOST_READERS);
    }

    /**
     * Opens a store, migrating it where need be.
     *
     * @throws StoreTrouble with what would do
     */
    public static Store open(Database database) {
        return open(database, System::nanoTime);
    }

    static Store open(Database database, LongSupplier nanoTime) {
        try {
            if (database.checksLong() && !Migrations.due(database)) {
                return new Store(database, nanoTime, Look.beside(database::check));
            }
            database.check();
            database.begin(Migrations::run);
            Migrations.run(database);
            return new Store(database, nanoTime, Look.over());
        } catch (StoreTrouble e) {
            throw e;
        } catch (RuntimeException e) {
            throw new StoreTrouble("store " + database.name() + " cannot be opened: " + rootOf(e)
                    + "; check that it is there and that this user may write it", e);
        }
    }

    /** Asks something, on a connection that cannot write. */
    public <T> T read(Function<Handle, T> question) {
        return readers.with(question);
    }

    /**
     * Whether what is there has been looked through, so that whoever writes need not wait. What may as well be written later
     * need not be written before.
     */
    boolean isLookedThrough() {
        return look.isOver();
    }

    /** Tells when the store turns out to be damaged, at once where that is known; nothing is written to it then. */
    public void whenDamaged(Consumer<StoreTrouble> tell) {
        look.whenDamaged(tell);
    }

    /**
     * Changes something: all of it, or, when anything is thrown, nothing.
     *
     * @throws StoreTrouble when the store can take nothing at present, whatever it is: it is damaged, its disk is full
     */
    public <T> T write(Function<Handle, T> change) {
        look.await();
        writing.lock();
        try {
            T answer = usable().inTransaction(h -> changed(h, change));
            if (nanoTime.getAsLong() - tidiedNs >= TIDY_EVERY_NS) {
                tidy(false);
            }
            return answer;
        } catch (RuntimeException e) {
            forget();
            throw Ailment.orNot(database.name(), e, this::letGoOfWriter);
        } catch (Error e) {
            forget();
            throw e;
        } finally {
            writing.unlock();
        }
    }

    private <T> T changed(Handle h, Function<Handle, T> change) {
        if (database.isShared() && pen.take(h)) {
            forget();
            refuseWhatIsNewer(h);
        }
        return change.apply(h);
    }

    /** Another has written since: perhaps one of a newer version, to whose tables this one's changes would be wrong. */
    private void refuseWhatIsNewer(Handle h) {
        try {
            Migrations.refuseWhatIsNewer(database, h);
        } catch (StoreTrouble newer) {
            isOutOfDate = true;
            throw newer;
        }
    }

    /** Whether a newer version has brought the store up to date meanwhile; nothing is written to it any more then. */
    boolean isOutOfDate() {
        return isOutOfDate;
    }

    /** The same, without an answer. */
    public void writing(Consumer<Handle> change) {
        write(handle -> {
            change.accept(handle);
            return null;
        });
    }

    /** A number for a new row of a table; within {@link #write} only. */
    public int next(Handle handle, String table) {
        return numbers.next(handle, table);
    }

    /** Whether other hosts may write to it too. */
    public boolean isShared() {
        return database.isShared();
    }

    Database database() {
        return database;
    }

    /** What whoever writes remembers of rows' numbers. */
    Numbers numbers() {
        return numbers;
    }

    /** Has something that remembers rows between transactions be told when they may have changed. */
    void remembers(Runnable forget) {
        writing.lock();
        try {
            memories.add(forget);
        } finally {
            writing.unlock();
        }
    }

    /** After something was overwritten for good: no copy of it is kept where that can be helped. */
    void scrub() {
        look.await();
        writing.lock();
        try {
            database.scrub(usable().getConnection());
        } catch (SQLException e) {
            LOG.warn("what was overwritten may linger in {}: {}", database.name(), e.toString());
        } finally {
            writing.unlock();
        }
    }

    /** What is remembered of rows may no longer be true; within {@link #write} only. */
    void forget() {
        memories.forEach(Runnable::run);
    }

    @Override
    public void close() {
        readers.close();
        writing.lock();
        try {
            if (isTidied) {
                tidy(false);
            }
        } finally {
            isClosed = true;
            writer.close();
            writing.unlock();
        }
    }

    private void tidyAtFirst() {
        writing.lock();
        try {
            isTidied = !isClosed;
            if (isTidied) {
                tidy(true);
            }
        } finally {
            writing.unlock();
        }
    }

    /** At each start and every hour, not at the end alone: a host that is killed never comes there. */
    private void tidy(boolean all) {
        tidiedNs = nanoTime.getAsLong();
        try {
            database.tidy(writer.getConnection(), all);
        } catch (SQLException e) {
            LOG.debug("not tidied: {}", e.toString());
        }
    }

    /** A connection of which nobody knows how far its last transaction came is not written by any more. */
    private void letGoOfWriter() {
        try {
            writer.close();
        } catch (RuntimeException e) {
            LOG.debug("the writing connection does not even close", e);
        }
    }

    /** The writer, opened anew where a server has dropped it. */
    private Handle usable() {
        try {
            if (!writer.isClosed() && writer.getConnection().isValid(VALID_WITHIN_S)) {
                return writer;
            }
        } catch (SQLException e) {
            LOG.debug("the writing connection: {}", e.toString());
        }
        LOG.info("connecting to the store again");
        writer.close();
        writer = openWriter();
        return writer;
    }

    private Handle openWriter() {
        return Jdbi.create(database::writer).open();
    }

    private static String rootOf(Throwable e) {
        Throwable root = e;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        return root.getMessage();
    }
}
