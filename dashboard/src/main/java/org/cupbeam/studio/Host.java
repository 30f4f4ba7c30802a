package org.cupbeam.studio;

import java.net.BindException;
import java.time.Clock;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.function.Consumer;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Connection;
import org.cupbeam.studio.ingest.Ingest;
import org.cupbeam.studio.ingest.PahoConnection;
import org.cupbeam.studio.ingest.Patience;
import org.cupbeam.studio.ingest.Turns;
import org.cupbeam.studio.lease.Succession;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.FaultBook;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.StoreTrouble;
import org.cupbeam.studio.web.LiveLanes;
import org.cupbeam.studio.web.WebServer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The studio host at work: ingest, store and pages, joined to a broker. Stops in the opposite order of its start. */
public final class Host implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Host.class);

    /**
     * Which of several hosts.
     *
     * @param site    all hosts at one broker; one of them keeps what the lanes there send
     * @param id      of this one
     * @param bridged whether the lanes are at other brokers, whose bridges bring what they send, and cannot hear it
     */
    record Place(String site, String id, boolean bridged) {
    }

    private final Deque<AutoCloseable> running = new ArrayDeque<>();
    private WebServer web;
    private Store store;

    private Host() {
    }

    /**
     * Starts a host.
     *
     * @param brokerUri as {@code tcp://127.0.0.1:1883}; the broker may be away
     * @param clientId  of the host at the broker, the same at every start
     * @param door      where the pages are, and who may come in
     * @throws BindException         when something else has the port
     * @throws IllegalStateException when the door is open to others than this machine, and no PIN is set
     */
    public static Host start(Database database, String brokerUri, String clientId, Door door) throws BindException {
        return start(database, new PahoConnection(brokerUri, clientId), door);
    }

    /** The same, with a broker that is reached so. */
    public static Host start(Database database, Connection broker, Door door) throws BindException {
        return start(database, new Place("main", "host", false), broker, door);
    }

    /** The same, one of several hosts. */
    static Host start(Database database, Place place, Connection broker, Door door) throws BindException {
        door.check();
        Host host = new Host();
        try {
            host.open(database, place, broker, door);
            return host;
        } catch (BindException | RuntimeException e) {
            host.close();
            throw e;
        }
    }

    /** The port of the pages. */
    public int port() {
        return web.port();
    }

    /** Returns when its store has been read, be it in vain: a store that answers no more is not to be told from a host that hangs. */
    void comesRound() {
        try {
            store.read(handle -> handle.createQuery("SELECT 1").mapTo(int.class).one());
        } catch (RuntimeException trouble) {
            LOG.debug("the store cannot be read", trouble); // whoever wants something of it says so
        }
    }

    /** Tells when the store turns out to be damaged: the host can show what it can read of it, and keeps nothing. */
    void whenDamaged(Consumer<StoreTrouble> tell) {
        store.whenDamaged(tell);
    }

    /** Has something that was started later stop before the host does. */
    public void stopsFirst(AutoCloseable later) {
        running.push(later);
    }

    @Override
    public void close() {
        while (!running.isEmpty()) {
            AutoCloseable next = running.pop();
            try {
                next.close();
            } catch (Exception e) {
                LOG.warn("stopping {}: {}", next.getClass().getSimpleName(), e.toString());
            }
        }
    }

    private void open(Database database, Place place, Connection broker, Door door) throws BindException {
        store = Store.open(database);
        running.push(store);
        LiveLanes lanes = new LiveLanes(UUID.randomUUID().toString().substring(0, 8));
        web = new WebServer(store, lanes, door.pin(), Clock.systemDefaultZone(), door.proxies());
        Turns turns = turns(place);
        Ingest ingest = new Ingest(broker, turns, place.bridged() ? Patience.WITH_BRIDGES : Patience.WITH_LANES,
                new Listening(lanes, new FaultBook(store), turns, Clock.systemUTC()), this::kept, Clock.systemUTC(),
                System::nanoTime, new Random());
        lanes.askBroker(ingest::connected);
        web.sendBy(ingest::send);
        web.operatedBy(ingest::vitals, door.scraper());
        web.start(door.address(), door.port());
        running.push(web);
        running.push(ingest.start());
        if (store.isShared()) {
            web.othersKeepToo();
        }
        web.warmUp();
    }

    /** Where others may be at the store too, one of them keeps the events. */
    private Turns turns(Place place) {
        Keeper keeper = new Keeper(store);
        if (!store.isShared()) {
            return Turns.always(keeper);
        }
        Succession succession = keeper.among(place.site(), place.id()).start();
        running.push(succession);
        return succession;
    }

    private void kept(List<Arrival> arrivals) {
        web.kept(arrivals);
    }
}
