package org.cupbeam.studio;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.BindException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import org.cupbeam.event.Topics;
import org.cupbeam.lane.Lane;
import org.cupbeam.lane.Lanes;
import org.cupbeam.log.LogForm;
import org.cupbeam.service.LastWord;
import org.cupbeam.service.Overseer;
import org.cupbeam.studio.ingest.Pass;
import org.cupbeam.studio.ingest.PahoConnection;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.StoreTrouble;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The all-in-one: broker, host and pages in one process, until it is told to stop. */
@Command(name = "cupbeam-studio", mixinStandardHelpOptions = true, version = "cupbeam-studio " + Studio.VERSION,
        description = "Keeps what the lanes of a studio see, and shows it.", subcommands = {PinCommand.class, StaffCommand.class, StoreCommand.class},
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:done", "1:a fault of its own", "2:it cannot start, or a file or an option makes no sense",
            "3:a lane of this process hung, and it has to be started again"})
public final class Studio implements Callable<Integer> {
    private static final String CLIENT_ID = "cupbeam-host";
    private static final int HUNG = 3;
    private static final String OTHER_STORE = "or name another store with --store or --data";
    static final String VERSION = "0.1.0";
    private static final long HISTORY_SEED = 20;
    private static final List<String> DUEL = List.of("Nadia", "Tomas");

    @Mixin
    private DoorOptions pages = new DoorOptions();

    @Option(names = "--data", paramLabel = "FOLDER", defaultValue = "cupbeam-data",
            description = "folder for all data (default: ./${DEFAULT-VALUE})")
    private Path data;

    @Mixin
    private BrokerOptions mqtt = new BrokerOptions();

    @Mixin
    private StoreOptions store = new StoreOptions();

    @Option(names = "--site", paramLabel = "NAME", defaultValue = "main",
            description = "of several hosts at one PostgreSQL, those of one site are at one broker; one of them keeps what "
                    + "the lanes send, and another goes on should it stop (default: ${DEFAULT-VALUE})")
    private String site;

    @Option(names = "--bridged",
            description = "this host is an owner's centre: other brokers' bridges bring what their lanes send, and nothing that "
                    + "is missing is sent again")
    private boolean bridged;

    @Option(names = "--studio", paramLabel = "NAME", defaultValue = "home",
            description = "the studio's name, for lanes in this process: a-z, 0-9, - (default: ${DEFAULT-VALUE})")
    private String studio;

    @Option(names = "--lane", paramLabel = "NAME=RIG.toml",
            description = "run a lane in this process, on this board's pins, fitted as its rig file says")
    private Map<String, Path> lanes = Map.of();

    @Option(names = "--practice", description = "run a lane in this process on a simulated green, with a duel going on")
    private boolean practice;

    @Option(names = "--history", description = "fill an empty store with a made-up year of a studio first")
    private boolean history;

    @Option(names = "--speed", paramLabel = "TIMES", defaultValue = "1",
            description = "how many times as fast the simulated green runs (default: ${DEFAULT-VALUE})")
    private double speed;

    @Spec
    private CommandSpec spec;

    private final AtomicReference<StoreTrouble> found = new AtomicReference<>();
    private final CountDownLatch toStop = new CountDownLatch(1);
    private final CountDownLatch stopped = new CountDownLatch(1);

    public static void main(String[] args) {
        LogForm.choose();
        LastWord.ofThisProcess();
        System.exit(new CommandLine(new Studio()).execute(args));
    }

    @Override
    public Integer call() throws InterruptedException {
        Runtime.getRuntime().addShutdownHook(new Thread(this::stop, "stop"));
        try {
            serve();
            return 0;
        } catch (CannotStart e) {
            spec.commandLine().getErr().println(e.getMessage());
            return CommandLine.ExitCode.USAGE;
        } finally {
            stopped.countDown();
        }
    }

    /** Asks it to stop, and waits until it has. */
    void stop() {
        toStop.countDown();
        try {
            stopped.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void serve() throws CannotStart, InterruptedException {
        Pass pass = mqtt.pass(practice || !lanes.isEmpty());
        try (DataFolder folder = DataFolder.claim(data);
             EmbeddedBroker broker = mqtt.startUnlessElsewhere();
             Host host = startHost(folder, mqtt.uri(broker), pass)) {
            startLanes(host, folder.path(), mqtt.uri(broker));
            String state = "Studio at http://localhost:" + host.port() + ", all data in " + folder.path() + ".";
            say(state + " Ctrl-C stops it.");
            Overseer overseer = Overseer.ofThisProcess();
            overseer.ready(state);
            host.stopsFirst(Heartbeat.start(overseer, host::comesRound));
            host.whenDamaged(this::stopFor);
            toStop.await();
            overseer.stopping();
        }
        StoreTrouble damage = found.get();
        if (damage != null) {
            throw new CannotStart(damage.getMessage(), OTHER_STORE, damage);
        }
        say("Stopped. The data stay in " + data.toAbsolutePath().normalize() + ".");
    }

    private void stopFor(StoreTrouble damage) {
        found.set(damage);
        toStop.countDown();
    }

    private void startLanes(Host host, Path folder, String uri) throws CannotStart {
        try {
            for (Map.Entry<String, Path> lane : lanes.entrySet()) {
                Lane running = Lanes.onBoard(topics(lane.getKey()), lane.getValue(), folder, uri, VERSION);
                running.whenHung(() -> Runtime.getRuntime().halt(HUNG)); // whoever keeps it running starts it again
                host.stopsFirst(running);
            }
            if (practice) {
                host.stopsFirst(Lanes.simulated(topics("practice"), DUEL, speed, folder, uri, VERSION));
            }
        } catch (IOException e) {
            throw new CannotStart(e.getMessage(), e);
        }
    }

    private Topics topics(String lane) throws CannotStart {
        try {
            return new Topics(studio, lane);
        } catch (IllegalArgumentException e) {
            throw new CannotStart(e.getMessage(), "see --studio and --lane", e);
        }
    }

    private Host startHost(DataFolder data, String broker, Pass pass) throws CannotStart {
        Path folder = data.path();
        try {
            Database database = store.database(folder);
            if (history) {
                makeUpHistory(database);
            }
            String id = database.isShared() ? CLIENT_ID + "-" + data.hostId() : CLIENT_ID;
            return Host.start(database, new Host.Place(site, id, bridged),
                    new PahoConnection(broker, id, pass, bridged), pages.door(folder));
        } catch (BindException e) {
            throw new CannotStart("port " + pages.port() + " is in use", "choose another with --port (in the demo: -Dport=8081)", e);
        } catch (StoreTrouble e) {
            throw new CannotStart(e.getMessage(), OTHER_STORE, e);
        }
    }

    /** A made-up year, so that every page has something to show; a store that holds anything is left alone. */
    private void makeUpHistory(Database database) {
        try (Store store = Store.open(database)) {
            if (store.read(handle -> handle.createQuery("SELECT count(*) FROM (SELECT 1 FROM event LIMIT 1) AS any")
                    .mapTo(long.class).one()) == 0) {
                say("Making up a year of history; this takes some seconds, once.");
                Seed.fill(store, Instant.now(), HISTORY_SEED, Size.STUDIO);
            }
        }
    }

    private void say(String line) {
        PrintWriter out = spec.commandLine().getOut();
        out.println(line);
        out.flush();
    }
}
