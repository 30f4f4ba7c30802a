package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.cupbeam.event.Health;
import org.cupbeam.event.Health.Sensor;
import org.cupbeam.event.Health.Sensor.Condition;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Topics;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The lanes' health in a real browser, and the trial of a lane's sensors. */
@Timeout(120)
class HealthIT {
    private static final Topics LANE = new Topics("home", "lane-1");
    private static Browser browser;

    @TempDir
    Path folder;
    private Pages pages;
    private Instant time = Scenes.NOW;

    @BeforeAll
    static void openBrowser() throws Exception {
        browser = new Browser();
    }

    @AfterAll
    static void closeBrowser() throws Exception {
        browser.close();
    }

    @BeforeEach
    void start() throws Exception {
        pages = new Pages(folder);
    }

    @AfterEach
    void stop() {
        pages.close();
    }

    @Test
    void lanesThatNeedSomebodyComeFirst() {
        pages.lanes.health(new Topics("home", "a-well"), Scenes.online(1, "j1"));
        pages.lanes.health(new Topics("home", "b-broken"), Scenes.online(1, "j2", "beam past is blocked all the time"));
        pages.lanes.health(new Topics("home", "c-lost"), Scenes.lost(1));
        browser.size(390, 844).open(pages.url("/health"));

        browser.awaitText("#said", "3 lanes, 2 need somebody");
        assertThat(browser.text("#lanes li:nth-child(1)")).contains("C lost").contains("Out of reach");
        assertThat(browser.text("#lanes li:nth-child(2)")).contains("Beam past is blocked all the time");
        assertThat(browser.text("#lanes li:nth-child(3)")).contains("Online").contains("all stored");
        assertThat(browser.value("document.documentElement.scrollWidth").asInt()).isLessThanOrEqualTo(390);
    }

    @Test
    void eachSensorIsShownAsItIsNow() {
        open();
        says(List.of(), beam("near-1", Condition.BLOCKED, 0.2), beam("far-1", Condition.UNSEEN, Double.NaN),
                beam("far-2", Condition.CHATTERING, 0));

        browser.awaitText("#sensors tr:nth-child(1)", "Blocked");
        assertThat(browser.text("#sensors tr:nth-child(1)")).contains("near-1").contains("31 cm before the hole");
        assertThat(browser.text("#sensors tr:nth-child(2)")).contains("Not seen yet").contains("never");
        assertThat(browser.text("#sensors tr:nth-child(3)")).contains("Chattering");
        says(List.of("beam far-2 turns on and off faster than anything in play can"));
        browser.awaitText("#faults", "Beam far-2 turns on and off");
        assertThat(browser.text("#state")).isEqualTo("Online, needs a look");
    }

    @Test
    void aBallThatEveryBeamSawAndTheCupTookPassesTheTrial() throws Exception {
        begin();
        says(List.of(), beam("near-1", Condition.CLEAR, 0.9), beam("far-1", Condition.CLEAR, 0.1),
                beam("far-2", Condition.BLOCKED, 0.0));
        browser.awaitText("#checks li:nth-child(2)", "Passed");
        assertThat(browser.text("#checks li:nth-child(3)")).contains("Waiting").contains("Something is in it");
        says(List.of(), beam("near-1", Condition.CLEAR, 0.9), beam("far-1", Condition.CLEAR, 0.1),
                beam("far-2", Condition.CLEAR, 0.0), cup(0));

        browser.awaitText("#do", "Passed: every beam and the cup");
        pages.lanes.score(LANE, Scenes.free(Scenes.HOLED));
        pages.lanes.score(LANE, Scenes.alone("Ada", 8, Scenes.PAST));
        browser.awaitText("#checks", "Past the limit, 1.31 m past the hole");
        browser.screenshot(Path.of("target", "pictures", "sensor-trial-wall.png"));
    }

    @Test
    void aBeamThatABallWentPastUnseenDoesNotPassAndSaysWhatToDo() {
        begin();
        says(List.of(), beam("near-1", Condition.CLEAR, 0.9), beam("far-1", Condition.CLEAR, 60),
                beam("far-2", Condition.CLEAR, 0.1));

        browser.awaitText("#checks li:nth-child(2)", "went past it unseen. Wipe lamp and receiver");
        assertThat(browser.text("#checks li:nth-child(2)")).contains("Not passed");
        assertThat(browser.text("#checks li:nth-child(3)")).contains("Passed");
        browser.awaitText("#do", "Not passed");
    }

    @Test
    void beamsThatTurnInTheWrongOrderHaveTheirPlugsExchanged() {
        begin();
        says(List.of(), beam("near-1", Condition.CLEAR, 0.9), beam("far-1", Condition.CLEAR, 0.1),
                beam("far-2", Condition.CLEAR, 0.5));

        browser.awaitText("#checks li:nth-child(3)", "two plugs are exchanged");
    }

    @Test
    void aSensorThatNeverClearedAndOneThatTurnsInAQuietMinuteAreNamed() {
        open();
        says(List.of(), beam("near-1", Condition.STUCK, 40), beam("far-1", Condition.CLEAR, 40), beam("far-2", Condition.CLEAR, 40), cup(40));
        browser.click("#begin");
        browser.awaitText("#checks li:nth-child(1)", "never cleared: misaligned or unplugged");
        browser.click("#quiet-begin");
        browser.awaitText("#quiet-do", "Nobody touches anything now").awaitText("#quiet-more", "s left");
        browser.value("(clock => { performance.now = () => clock() + 61000; })(performance.now.bind(performance))");
        says(List.of(), beam("near-1", Condition.CLEAR, 100), new Sensor("far-1", Sensor.Kind.BEAM, Condition.CLEAR, 1, 44),
                beam("far-2", Condition.CLEAR, 100), cup(100));
        browser.awaitText("#quiet-told", "Beam far-1 turned 44 times in a minute in which nobody touched it").awaitText("#quiet-do", "Not quiet");
        assertThat(browser.value("document.querySelectorAll('#quiet-told li').length").asInt()).isEqualTo(1);
        browser.awaitText("#limit-do", "Nothing stands in the way");
        browser.click("#quiet-begin");
        browser.value("(clock => { performance.now = () => clock() + 61000; })(performance.now.bind(performance))");
        says(List.of(), beam("near-1", Condition.CLEAR, 100), beam("far-1", Condition.CLEAR, 100), beam("far-2", Condition.CLEAR, 100), cup(100));
        browser.awaitText("#quiet-do", "Quiet: no sensor turned more than 6 times");
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void aLaneThatIsLostCannotBeTried() {
        open();
        pages.lanes.health(LANE, Scenes.lost(1));

        browser.awaitText("#state", "Out of reach");
        browser.awaitText("#do", "has to be online");
        assertThat(browser.value("document.getElementById('begin').disabled").asBoolean()).isTrue();
    }

    private void begin() {
        open();
        browser.await("!document.getElementById('begin').disabled");
        browser.click("#begin");
        browser.awaitText("#do", "Now roll a ball through");
        // Two seconds pass: edges are told of in seconds ago, and only those since the beginning count.
        browser.value("(clock => { performance.now = () => clock() + 2000; })(performance.now.bind(performance))");
    }

    private void open() {
        pages.lanes.score(LANE, Scenes.free(Scenes.HOLED));
        says(List.of(), beam("near-1", Condition.CLEAR, 40), beam("far-1", Condition.CLEAR, 40),
                beam("far-2", Condition.CLEAR, 40), cup(40));
        browser.size(1920, 1080).open(pages.url("/health/home/lane-1"));
        browser.awaitText("#sensors", "near-1");
    }

    private void says(List<String> faults, Sensor... sensors) {
        time = time.plusSeconds(1);
        pages.lanes.health(LANE, new Health(Health.State.ONLINE, 1, "boot-1", new Health.Report("j1", "0.1.0", time,
                Stamp.Clock.SYNCHRONISED, 0, 0, List.of(sensors), faults)));
    }

    private static Sensor beam(String name, Condition condition, double agoS) {
        return new Sensor(name, Sensor.Kind.BEAM, condition, agoS, agoS < 30 ? 2 : 0);
    }

    private static Sensor cup(double agoS) {
        return new Sensor("cup", Sensor.Kind.CUP, Condition.CLEAR, agoS, agoS < 30 ? 6 : 0);
    }
}
