package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.practice.Sensing;
import org.cupbeam.edge.practice.Surface;
import org.cupbeam.edge.practice.Tempo;
import org.cupbeam.event.Topics;
import org.cupbeam.lane.Lane;
import org.cupbeam.lane.LaneSettings;
import org.cupbeam.lane.PracticeGreen;
import org.cupbeam.lane.Surroundings;
import org.cupbeam.link.LinkOptions;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigText;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A green tested with a phone, in a real browser: lane, broker and host whole, on a simulated green that somebody rolls on. */
@Timeout(180)
class RollTestIT {
    private static final double TIMES = 2.5;
    private static final String PUTTS = "(async () => (await (await fetch('/api/lanes/home/tested/putts')).json()).putts.map(p =>"
            + " p.sequence).join())()";
    private static Browser browser;
    private static EmbeddedBroker broker;

    @TempDir
    private Path folder;
    private Host host;
    private Lane lane;

    @BeforeAll
    static void openBrowser() throws Exception {
        browser = new Browser();
        broker = new EmbeddedBroker(0);
    }

    @AfterAll
    static void closeBrowser() throws Exception {
        browser.close();
        broker.close();
    }

    @BeforeEach
    void start() throws Exception {
        host = Host.start(Database.file(folder.resolve("studio.db")), broker.uri(), "host",
                new Door("127.0.0.1", 0, StaffPin.quick(folder.resolve("staff-pin"))));
        Rig rig = PracticeRigs.STANDARD.on(10, 1.5, 0);
        Tempo tempo = Tempo.times(TIMES);
        lane = Lane.open(LaneSettings.of(new Topics("home", "tested"), rig, folder.resolve("lane.db")),
                Surroundings.ofThisMachine("test").at(tempo::nowNs, TIMES), LinkOptions.open(broker.uri()));
        lane.start(PracticeGreen.of(11, PracticeLane.clean(rig).with(Surface.usual()).with(Sensing.usual()), tempo,
                lane::upNext));
    }

    @AfterEach
    void stop() {
        lane.close();
        host.close();
    }

    @Test
    void somebodyIsLedThroughATestAndNoRollIsAPutt() throws Exception {
        open(390, "/green/home/tested/test");
        browser.awaitText("#do", "Roll balls through the beams both ways");
        browser.screenshot(Pictures.of("roll-test-begin"));
        browser.click("#begin");
        browser.awaitText("#do", "toward the hole").awaitText("#told", "Putts are not counted here now");
        browser.await("document.querySelectorAll('#balls li').length >= 1", 40);
        browser.screenshot(Pictures.of("roll-test-goes-on"));
        String before = browser.value(PUTTS).asText();
        browser.await("!document.getElementById('result').hidden", 60);

        browser.awaitText("#more-said", "known well enough");
        assertThat(browser.text("#speed")).matches("\\d+\\.\\d\\d ft . 0\\.\\d\\d");
        assertThat(browser.value("document.querySelectorAll('#more').length").asInt()).isEqualTo(1);
        assertThat(browser.text("#words")).contains("the line rises 1.").contains("Slope by the rolls: 1.");
        assertThat(browser.value("parseFloat(document.getElementById('speed').textContent)").asDouble()).isBetween(9.3, 10.7);
        assertThat(browser.value("document.documentElement.scrollWidth").asInt()).isLessThanOrEqualTo(390);
        browser.click("#balls li button");
        browser.awaitText("#balls li", "left out");
        browser.click("[aria-pressed=true]");
        browser.await("!document.querySelector('[aria-pressed=true]')");
        browser.screenshot(Pictures.of("roll-test-done"));
        assertThat(browser.value(PUTTS).asText()).as("no roll is a putt").isEqualTo(before);
        assertThat(browser.complaints()).isEmpty();

        open(390, "/health/home/tested");
        browser.await("!document.getElementById('rig-part').hidden");
        assertThat(browser.text("#rig-text")).contains("name = \"before-1\"", "position_mm = -300.0", "the file had 914.4");
        assertThat(browser.value("document.documentElement.scrollWidth").asInt()).isLessThanOrEqualTo(390);
        browser.value("scrollTo(0, document.getElementById('places').offsetTop - 16)");
        browser.screenshot(Pictures.of("places-phone"));
        browser.value("document.getElementById('whole-text').value = " + new ObjectMapper().writeValueAsString(RigText.of(PracticeRigs.STANDARD.level())));
        browser.click("#whole button");
        browser.awaitText("#file-do", "This is the whole rig file");
        assertThat(browser.text("#rig-text")).contains("gpio = 17", "rolled balls");
        assertThat(browser.value("document.documentElement.scrollWidth").asInt()).isLessThanOrEqualTo(390);
        browser.value("scrollTo(0, document.getElementById('file').offsetTop - 16)");
        browser.screenshot(Pictures.of("rig-file-phone"));
        browser.size(1920, 1080).value("scrollTo(0, document.getElementById('places').offsetTop - 16)");
        browser.screenshot(Pictures.of("places-wall"));
        assertThat(browser.complaints()).isEmpty();

        open(1920, "/board/home/tested");
        browser.awaitText("#alarm", "putts are not counted until that ends");
        open(1920, "/green/home/tested/test");
        browser.await("!document.getElementById('result').hidden");
        browser.screenshot(Pictures.of("roll-test-wall"));
        browser.click("#keep");
        browser.awaitText("#last", "Last test with rolled balls").awaitText("#do", "Roll balls through the beams both ways");
        browser.await(PUTTS + ".then(now => now !== '" + before + "')", 60);
        open(1920, "/green/home/tested");
        browser.awaitText("#tested", "kept by staff");
    }

    private void open(int width, String path) {
        browser.size(width, width < 600 ? 1000 : 1080).open("http://127.0.0.1:" + host.port() + path);
    }
}
