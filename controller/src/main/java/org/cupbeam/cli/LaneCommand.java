package org.cupbeam.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.Command.Start;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Topics;
import org.cupbeam.journal.JournalException;
import org.cupbeam.lane.Lane;
import org.cupbeam.lane.LaneSettings;
import org.cupbeam.lane.UpNext;
import org.cupbeam.link.LinkOptions;
import org.cupbeam.link.PasswordFile;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.file.BadFileException;
import org.cupbeam.service.Overseer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Runs a lane. */
@Command(name = "lane", mixinStandardHelpOptions = true, description = {
    "Watches a lane's sensors, keeps its score and tells the studio, until interrupted.",
    "Started again it goes on where it was. A broker that is away is waited for."})
final class LaneCommand implements Callable<Integer> {
    private static final int HUNG = 3;

    @Mixin
    EdgeOptions edges = new EdgeOptions();

    @Option(names = "--studio", paramLabel = "NAME",
            description = "the studio's name, a-z, 0-9 and hyphen; ${DEFAULT-VALUE}")
    String studio = "home";

    @Option(names = "--lane", paramLabel = "NAME",
            description = "the lane's name in it, likewise; ${DEFAULT-VALUE}")
    String lane = "lane-1";

    @Option(names = "--data", paramLabel = "DIR",
            description = "where the journal is kept; ${DEFAULT-VALUE}")
    Path data = Path.of("cupbeam-data");

    @Option(names = "--broker", paramLabel = "URI",
            description = "the studio's MQTT broker, tcp:// or ssl://; ${DEFAULT-VALUE}")
    String broker = "tcp://localhost:1883";

    @Option(names = "--username", paramLabel = "NAME", description = "if the broker asks for one")
    String user;

    @Option(names = "--password-file", paramLabel = "FILE",
            description = "whose first line is the password; nobody but its owner may read it")
    Path passwordFile;

    @Option(names = "--ca-file", paramLabel = "FILE.pem",
            description = "certificates to trust in the broker, where they are the studio's own")
    Path trusted;

    @Option(names = "--drill", paramLabel = "DRILL.toml",
            description = "begin this drill, unless it is being played already")
    Path drillFile;

    @Option(names = "--players", split = ",", paramLabel = "NAME", description = "who plays it, in order of their turns")
    List<String> players;

    @Override
    public Integer call() throws Exception {
        Topics topics = topics();
        Path journal = data.resolve(studio + "." + lane + ".db");
        Lane.prepare(journal);
        Rig rig = edges.rig();
        LaneSettings settings = LaneSettings.of(topics, rig, journal).with(start())
                .with(edges.lamp(rig));
        LinkOptions link = link();
        try {
            Lane running = Lane.open(settings, edges.surroundings(), link);
            return run(running, rig, link);
        } catch (JournalException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private int run(Lane running, Rig rig, LinkOptions link) throws IOException, InterruptedException {
        Overseer overseer = Overseer.ofThisProcess();
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            overseer.stopping();
            running.close();
        }, "end"));
        running.whenHung(() -> Runtime.getRuntime().halt(HUNG)); // whoever keeps it running starts it again
        running.start(edges.open(rig, running::upNext));
        String state = "lane " + studio + "/" + lane + " is ready, " + playing(running.upNext())
                + "; its data is in " + data.toAbsolutePath().normalize() + ", its broker " + link;
        overseer.ready(state);
        running.whileWell(overseer::well);
        System.err.println("cupbeam: " + state);
        new CountDownLatch(1).await();
        return 0;
    }

    private static String playing(UpNext next) {
        return next.player() == null ? "nothing is played"
                : next.player() + " putts from " + Math.round(next.stationMm()) + " mm";
    }

    private Topics topics() throws Refusal {
        try {
            return new Topics(studio, lane);
        } catch (IllegalArgumentException nonsense) {
            throw new Refusal("--studio, --lane: " + nonsense.getMessage());
        }
    }

    private LinkOptions link() throws Refusal, IOException {
        String password;
        try {
            password = passwordFile == null ? null : PasswordFile.read(passwordFile);
        } catch (IllegalArgumentException nonsense) {
            throw new Refusal(nonsense.getMessage());
        }
        try {
            return new LinkOptions(broker, user, password, trusted);
        } catch (IllegalArgumentException nonsense) {
            throw new Refusal("--broker: " + nonsense.getMessage());
        }
    }

    /** What is to be played; null where nothing is said of it. */
    private Start start() throws Refusal, IOException {
        if (drillFile == null) {
            if (players != null) {
                throw new Refusal("--players: nobody plays without a drill; add --drill DRILL.toml");
            }
            return null;
        }
        try {
            return new Start(DrillFile.read(drillFile), Players.checked(players), Tags.NONE);
        } catch (BadFileException nonsense) {
            throw new Refusal(nonsense);
        }
    }
}
