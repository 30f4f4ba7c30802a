package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.lane.Lane;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Somebody who has never seen these pages, with a phone and an address. They touch what they see, by the words on it; they do
 * not scroll to look for more; and a duel is on.
 */
@Timeout(120)
class NewcomerIT {
    private static final int WITH_NAMES_TO_TYPE = 4;
    private static final int WITH_NAMES_TO_TOUCH = 4;
    private static final String PIN = "739205";
    private static Browser browser;

    @TempDir
    private Path folder;
    private StaffPin pin;
    private EmbeddedBroker broker;
    private Host host;
    private Lane lane;
    private Thumb thumb;

    @BeforeAll
    static void open() throws Exception {
        browser = new Browser().calm().size(390, 844);
    }

    @AfterAll
    static void close() throws Exception {
        browser.close();
    }

    @BeforeEach
    void start() throws Exception {
        broker = new EmbeddedBroker(0);
        pin = StaffPin.quick(folder.resolve("staff-pin"));
        host = Host.start(Database.file(folder.resolve("studio.db")), broker.uri(), "host", new Door("127.0.0.1", 0, pin));
        lane = SilentLane.start("window", folder, broker.uri());
        thumb = new Thumb(browser);
    }

    @AfterEach
    void stop() throws Exception {
        lane.close();
        host.close();
        broker.close();
    }

    @Test
    void startsADuelAndThenAnother() throws Exception {
        arrive();
        thumb.touch("Start a game");
        for (String name : List.of("Ada", "Bo")) {
            thumb.touch("Find or add a name");
            thumb.type(name);
            thumb.enter();
        }
        thumb.touch("Start Ada against Bo");
        duelIsOn("Ada", "Bo");
        assertThat(thumb.taps()).as("with names to be typed").isLessThanOrEqualTo(WITH_NAMES_TO_TYPE);

        arrive();
        thumb.touch("Start a game");
        thumb.touch("Bo");
        thumb.touch("Ada");
        thumb.touch("Start Bo against Ada");
        duelIsOn("Bo", "Ada");
        assertThat(thumb.taps()).as("with names to be touched").isLessThanOrEqualTo(WITH_NAMES_TO_TOUCH);
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void whereThereIsAPinSignsInOnTheWayAndIsLedOn() throws Exception {
        pin.set(PIN);
        arrive();
        thumb.touch("Start a game");
        thumb.touch("PIN");
        thumb.type(PIN);
        thumb.touch("Sign in");
        for (String name : List.of("Ada", "Bo")) {
            thumb.touch("Find or add a name");
            thumb.type(name);
            thumb.touch("Add " + name);
        }
        thumb.touch("Start Ada against Bo");
        duelIsOn("Ada", "Bo");
    }

    @Test
    void findsTheSameWayFromALaneAmongOthers() throws Exception {
        try (Wire other = new Wire(broker.uri())) {
            other.say("cupbeam/home/lane-1/score", ScoreJson.encode(Scenes.free(Scenes.HOLED)), true);
            arriveAt("window");
            thumb.touch("window");
            thumb.touch("Start a game");
            thumb.sees("Find or add a name");
        }
    }

    /** At the address of the studio, and nothing behind it. */
    private void arrive() throws InterruptedException {
        arriveAt("Start a game");
    }

    /** Comes until the lane that has just been switched on has been heard. */
    private void arriveAt(String words) throws InterruptedException {
        String address = "http://127.0.0.1:" + host.port() + "/";
        for (int tries = 0; tries < 50 && !thumb.saw(words); tries++) {
            browser.open(address);
            Thread.sleep(200);
        }
        thumb.begin();
        thumb.sees(words);
    }

    private void duelIsOn(String first, String second) {
        browser.awaitText("#turn-said", "To putt").awaitText("#name", first).awaitText("#sides", second);
        assertThat(browser.text("#where")).contains("station 1 of 10").contains("6 balls left");
    }
}
