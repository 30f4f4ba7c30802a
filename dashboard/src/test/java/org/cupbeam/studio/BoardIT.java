package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.UUID;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.studio.store.Database;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The board in a real browser, fed over MQTT alone. */
@Timeout(120)
class BoardIT {
    private static Browser browser;
    private static EmbeddedBroker broker;

    @TempDir
    Path folder;
    private final String clientId = "host-" + UUID.randomUUID();
    private Host host;
    private Wire lane;

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
        lane = new Wire(broker.uri());
        lane.forget("cupbeam/home/lane-1/score");
        lane.forget("cupbeam/home/lane-1/health");
        host = Host.start(database(), broker.uri(), clientId, Door.here(0, folder));
    }

    @AfterEach
    void stop() throws Exception {
        lane.close();
        host.close();
    }

    @Test
    void showsWhoseTurnItIsAndFromWhere() throws Exception {
        open(1920, 1080, "");
        say(Scenes.online(1, "j1"));
        say(Scenes.alone("Ada", 5, Scenes.MISSED));

        browser.awaitText("#name", "Ada");
        assertThat(browser.text("#far")).contains("2.74").contains("m");
        assertThat(browser.text("#station")).isEqualTo("Station 3 of 10");
        assertThat(browser.text("#balls-said")).isEqualTo("3 balls left");
        assertThat(browser.text("#game")).contains("Ladder").contains("breaks left to right, uphill");
        assertThat(browser.text("#said")).contains("Missed, 42 cm past the hole").contains("touched the rim");
        assertThat(browser.text("#line")).contains("42 cm ± 1.7 cm").contains("limit 91 cm");
        assertThat(browser.text("#link-said")).isEqualTo("Live");
        assertThat(browser.complaints()).isEmpty();
    }

    /** Those of the rig, as far from the hole as they are: what the marks of the ruler are drawn by. */
    @Test
    void drawsTheLightBeamsToScaleAndTellsOfThem() throws Exception {
        open(1920, 1080, "");
        say(Scenes.alone("Ada", 5, Scenes.MISSED));
        browser.awaitText("#beams-said", "its light beams: 31 cm before the hole; 99 cm, 1.05 m past it.");

        double hole = middle("#line > circle");
        double limit = middle("#line > line[stroke*=past]");
        double mmPerPixel = 914.4 / (limit - hole);
        JsonNode beams = browser.value("[...document.querySelectorAll('#line .beam')].map(each => each.getBoundingClientRect().x)");
        assertThat(beams).hasSize(3);
        for (int i = 0; i < 3; i++) {
            assertThat((beams.get(i).asDouble() - hole) * mmPerPixel).isCloseTo(new double[] {-310, 990, 1050}[i], within(5.0));
        }
        assertThat(browser.text("#legend")).contains("light beam");
    }

    private double middle(String selector) {
        return browser.value("(box => box.x + box.width / 2)(document.querySelector('" + selector + "').getBoundingClientRect())").asDouble();
    }

    @Test
    void keepsTheWordsOfARuleTogether() throws Exception {
        open(1920, 1080, "");
        String score = new String(ScoreJson.encode(Scenes.alone("Ada", 5, Scenes.MISSED)), StandardCharsets.UTF_8);
        lane.say("cupbeam/home/lane-1/score", score.replace("\"Ladder\"", "\"Ladder, 4 balls, lose a ball\"")
                .getBytes(StandardCharsets.UTF_8), true);

        browser.await("document.querySelector('#game').innerText.includes('lose\\u00a0a\\u00a0ball')");
    }

    @Test
    void soundsOnlyWhereSomebodyWantsItAndEachOutcomeInItsOwnWay() throws Exception {
        open(1920, 1080, "");
        say(Scenes.alone("Ada", 5, Scenes.MISSED));
        browser.awaitText("#name", "Ada");
        browser.value("""
                window.notes = [];
                window.AudioContext = class {
                  currentTime = 0;
                  resume() {}
                  createGain() { return { gain: { setValueAtTime() {}, linearRampToValueAtTime() {}, exponentialRampToValueAtTime() {} }, connect() {} }; }
                  createOscillator() { return { frequency: {}, connect: to => to, start() { notes.push(Math.round(this.frequency.value)); }, stop() {} }; }
                }""");
        say(Scenes.alone("Ada", 6, Scenes.HOLED));
        browser.awaitText("#said", "Holed");
        assertThat(notes()).as("off until wanted").isEmpty();

        browser.click("#sound");
        assertThat(notes()).isEqualTo("523,784");
        say(Scenes.alone("Ada", 7, Scenes.MISSED));
        browser.awaitText("#said", "Missed");
        assertThat(notes()).isEqualTo("523,784,220");
        say(Scenes.alone("Ada", 8, Scenes.PAST));
        browser.awaitText("#said", "Past the limit");
        assertThat(notes()).isEqualTo("523,784,220,392,294,196");
        say(Scenes.alone("Ada", 7, Scenes.MISSED));
        browser.awaitText("#said", "Missed");
        assertThat(notes()).as("a putt taken back makes no sound").isEqualTo("523,784,220,392,294,196");

        browser.click("#sound");
        say(Scenes.alone("Ada", 9, Scenes.HOLED));
        browser.awaitText("#said", "Holed");
        assertThat(notes()).isEqualTo("523,784,220,392,294,196");
    }

    private static String notes() {
        return browser.value("notes.join()").asText();
    }

    @Test
    void drawsTheLineToScale() throws Exception {
        open(1920, 1080, "");
        say(Scenes.alone("Ada", 5, Scenes.MISSED));
        browser.awaitText("#name", "Ada");

        double perMm = browser.value("(() => { const [hole, ball] = document.querySelectorAll('#line circle');"
                + "return (ball.getAttribute('cx') - hole.getAttribute('cx')) / 417.3; })()").asDouble();
        double hole = browser.value("+document.querySelectorAll('#line circle')[0].getAttribute('r')").asDouble();
        double ball = browser.value("+document.querySelectorAll('#line circle')[1].getAttribute('r')").asDouble();
        assertThat(hole / perMm).as("the hole's radius, mm").isBetween(53.5, 54.5);
        assertThat(ball / perMm).as("the ball's radius, mm").isBetween(21.0, 21.7);
    }

    @Test
    void spellsOutWhatDecidesADuel() throws Exception {
        open(1920, 1080, "");
        say(Scenes.duel(false));
        browser.awaitText("#deciding", "Level at 2 stations; fewer putts put Ada ahead, 5 to 7");
        assertThat(browser.value("document.querySelectorAll('#rows > li').length").asInt()).isEqualTo(2);
        assertThat(browser.text("#rows > li[data-turn] .who")).contains("Bo").contains("to putt now");

        say(Scenes.duel(true));
        browser.awaitText("#name", "Ada wins");
        assertThat(browser.text("#deciding")).isEqualTo("Level at 2 stations; Ada wins on fewer putts, 5 to 7");
    }

    @Test
    void saysWhenTheLaneIsLostAndWhenItIsBack() throws Exception {
        open(1920, 1080, "");
        say(Scenes.online(4, "j1"));
        say(Scenes.alone("Ada", 5, Scenes.HOLED));
        browser.awaitText("#said", "Holed");
        say(Scenes.lost(4));
        browser.awaitText("#alarm", "The lane has stopped answering");
        assertThat(browser.text("#name")).as("how things stood stays").isEqualTo("Ada");

        say(Scenes.online(5, "j1"));
        browser.awaitText("#link-said", "Live");
        say(Scenes.lost(4));
        say(Scenes.alone("Ada", 6, Scenes.PAST));
        browser.awaitText("#said", "Past the limit, 1.31 m past the hole");
        assertThat(browser.text("#link-said")).as("a will of an earlier connection is late").isEqualTo("Live");
    }

    @Test
    void saysWhatNeedsALook() throws Exception {
        open(390, 844, "");
        say(Scenes.online(1, "j1", "beam near-1 is stuck"));

        browser.awaitText("#alarm", "Needs a look: beam near-1 is stuck");
    }

    @Test
    void comesBackByItselfWhenTheHostIsStartedAgain() throws Exception {
        open(1920, 1080, "");
        say(Scenes.alone("Ada", 5, Scenes.HOLED));
        browser.awaitText("#name", "Ada");
        browser.value("window.neverReloaded = true");
        int port = host.port();
        host.close();
        browser.awaitText("#alarm", "The studio computer does not answer");

        host = Host.start(database(), broker.uri(), clientId, Door.here(port, folder));
        browser.awaitText("#link-said", "Live");
        say(Scenes.alone("Bo", 9, Scenes.MISSED));
        browser.awaitText("#name", "Bo");
        assertThat(browser.value("window.neverReloaded").asBoolean()).isTrue();
    }

    @Test
    void showsAHostileNameAsText() throws Exception {
        String name = "<img src=x onerror=alert(1)>";
        open(1920, 1080, "");
        say(Scenes.alone(name, 5, Scenes.HOLED));

        browser.awaitText("#name", name);
        assertThat(browser.value("document.images.length").asInt()).isZero();
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void speaksFeetAndInchesWhereAsked() throws Exception {
        open(1920, 1080, "");
        say(Scenes.alone("Ada", 5, Scenes.PAST));
        browser.awaitText("#said", "1.31 m past the hole");
        browser.click("#units");

        browser.awaitText("#said", "Past the limit, 4 ft 4 in past the hole");
        assertThat(browser.text("#far")).contains("9").contains("ft");
        browser.click("#units");
        browser.awaitText("#far", "2.74");
    }

    @Test
    void fitsAWallWithoutScrollingAndAPhoneWithoutGoingSideways() throws Exception {
        open(1920, 1080, "");
        say(Scenes.duel(false));
        browser.awaitText("#deciding", "Level");
        assertThat(browser.value("document.documentElement.scrollHeight").asInt()).isLessThanOrEqualTo(1080);
        browser.screenshot(Pictures.of("board-duel-wall"));

        open(390, 844, "");
        browser.awaitText("#deciding", "Level");
        assertThat(browser.value("document.documentElement.scrollWidth").asInt()).isLessThanOrEqualTo(390);
        browser.screenshot(Pictures.of("board-duel-phone"));
    }

    @Test
    void canBeUsedWithTheKeyboardAlone() throws Exception {
        open(1920, 1080, "");
        browser.press("Tab");
        assertThat(browser.value("document.activeElement.className").asText()).isEqualTo("skip");
        browser.press("Tab");
        assertThat(browser.value("document.activeElement.id").asText()).isEqualTo("units");
        browser.press("Enter");
        browser.awaitText("#units", "Show metres");
        browser.press("Enter");
        browser.awaitText("#units", "Show feet");
    }

    @Test
    void waitsForALaneThatHasSaidNothingYet() {
        open(390, 844, "");

        browser.awaitText("#name", "Waiting for the lane");
        assertThat(browser.text("#said")).isEqualTo("None yet");
    }

    private void open(int width, int height, String query) {
        browser.size(width, height).open("http://127.0.0.1:" + host.port() + "/board/home/lane-1" + query);
    }

    private Database database() {
        return Database.file(folder.resolve("studio.db"));
    }

    private void say(Score score) throws Exception {
        lane.say("cupbeam/home/lane-1/score", ScoreJson.encode(score), true);
    }

    private void say(Health health) throws Exception {
        lane.say("cupbeam/home/lane-1/health", HealthJson.encode(health), true);
    }
}
