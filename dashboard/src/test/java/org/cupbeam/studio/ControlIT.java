package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
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

/** A lane run from a phone, in a real browser. */
@Timeout(120)
class ControlIT {
    private static final String HOSTILE = "<img src=x onerror=document.title=1>";
    private static Browser browser;
    private static EmbeddedBroker broker;
    private static int lanes;

    @TempDir
    private Path folder;
    private String name;
    private StaffPin pin;
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
        name = "phone-" + ++lanes;
        pin = StaffPin.quick(folder.resolve("staff-pin"));
        host = Host.start(Database.file(folder.resolve("studio.db")), broker.uri(), "host", new Door("127.0.0.1", 0, pin));
        lane = SilentLane.start(name, folder, broker.uri());
    }

    @AfterEach
    void stop() {
        lane.close();
        host.close();
    }

    @Test
    void aDuelIsSetUpWithAFewTouchesAndPlayed() {
        openControl();
        browser.await("!document.querySelector('#start').hidden");
        assertThat(browser.text("#go")).isEqualTo("Choose who plays");
        add("Ada");
        add(HOSTILE);
        assertThat(browser.text("#go")).isEqualTo("Start Ada against " + HOSTILE);
        browser.click("#go");

        browser.awaitText("#name", "Ada").awaitText("#told", "Started: Ada against " + HOSTILE);
        assertThat(browser.text("#where")).isEqualTo("91 cm, station 1 of 10, 6 balls left");
        browser.click("#miss-open");
        browser.click("#miss-short");
        browser.awaitText("#where", "5 balls left").awaitText("#last", "Ada: missed, within the limit, entered by hand");
        click("#told button");
        browser.awaitText("#where", "6 balls left").awaitText("#last", "Nobody has putted yet");
        browser.click("#pass");
        browser.awaitText("#name", HOSTILE);
        assertThat(browser.value("document.querySelectorAll('main img').length").asInt()).isZero();
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void whatCannotBeUndoneAsksBack() {
        openControl();
        startAlone("Ada");
        browser.click("#miss-open");
        browser.value("document.querySelector('#miss-at').value = 8;"
                + "document.querySelector('#miss-at').dispatchEvent(new Event('input'))");
        assertThat(browser.text("#miss-enter")).isEqualTo("Enter 40 cm past");
        browser.click("#miss-enter");
        browser.awaitText("#last", "Ada: missed, 40 cm past the hole");
        browser.click("#end");
        browser.awaitText("#end", "Yes, stop here");
        assertThat(browser.text("#turn-said")).as("not yet").isEqualTo("To putt");
        browser.click("#end");

        browser.awaitText("#turn-said", "Run over");
        browser.click("#again");
        browser.click("#again");
        browser.awaitText("#where", "6 balls left");
    }

    @Test
    void aPuttIsStruckFromTheRecordAndTheGameStays() {
        openControl();
        startAlone("Ada");
        browser.click("#miss-open");
        browser.click("#miss-short");
        browser.await("document.querySelectorAll('#putts details').length === 1");
        browser.click("#putts summary");
        browser.click("#putts details button");
        browser.awaitText("#putts", "Yes, it does not count");
        browser.click("#putts details button");

        browser.awaitText("#putts .struck", "struck by staff");
        assertThat(browser.text("#where")).contains("5 balls left");
    }

    @Test
    void saysWhatTheLaneRefuses() throws Exception {
        openControl();
        startAlone("Ada");
        browser.await("document.querySelector('#take-back').disabled");
        browser.value("document.querySelector('#take-back').disabled = false");
        browser.value("import('/js/orders.js').then(m => { m.order('home/" + name + "', { command: 'take-back' }) })");

        browser.awaitText("#told", "There is no attempt to take back.");
    }

    @Test
    void needsNoMouse() {
        openControl();
        browser.await("!document.querySelector('#start').hidden").value("document.querySelector('#who').focus()");
        browser.call("Input.insertText", Map.of("text", "Ada"));
        browser.press("Enter");
        browser.awaitText("#chosen", "Ada");
        for (int i = 0; i < 40 && !"go".equals(focused()); i++) {
            browser.press("Tab");
        }
        assertThat(focused()).isEqualTo("go");
        browser.press("Enter");

        browser.awaitText("#name", "Ada");
        for (int i = 0; i < 40 && !"miss-open".equals(focused()); i++) {
            browser.press("Tab");
        }
        browser.press("Enter");
        browser.await("document.activeElement.id === 'miss-short'");
        browser.press("Enter");
        browser.awaitText("#where", "5 balls left");
    }

    @Test
    void fitsAPhone() {
        openControl();
        startAlone("Maximiliane-Theodora von und zu Unterweg");
        for (String path : new String[] {"/control/home/" + name, "/drills", "/drills#preset-ladder", "/sign-in", "/lanes"}) {
            browser.open(url(path)).await("document.querySelector('h1').textContent !== ''");
            assertThat(browser.value("document.documentElement.scrollWidth").asInt()).as(path).isLessThanOrEqualTo(390);
        }
    }

    @Test
    void asksForThePinAndLetsIn() {
        pin.set("739205");
        browser.size(390, 844).open(url("/control/home/" + name));
        browser.await("location.pathname === '/sign-in' && !document.querySelector('#enter').hidden");
        type("#pin", "111222");
        browser.click("#enter button");
        browser.awaitText("#enter-wrong", "That is not the PIN.");
        type("#pin", "739205");
        type("#who", "Kim");
        browser.click("#enter button");

        browser.await("location.pathname === '/control/home/" + name + "'").awaitText(".account b", "Kim");
    }

    @Test
    void aDrillIsMadeTriedSavedAndPlayed() {
        browser.size(390, 844).open(url("/drills"));
        browser.await("document.querySelectorAll('#presets li').length === 4");
        browser.click("#new");
        type("#f-name", "Three short ones");
        type("#f-count", "3");
        browser.awaitText("#edit-words", "3 stations, 1.00 m to 2.00 m, 50 cm apart.");
        browser.await("document.querySelectorAll('#edit-try .lines li').length > 0");
        browser.click("#save");
        browser.awaitText("#one-name", "Three short ones").awaitText("#told", "Saved");

        openControl();
        browser.await("document.querySelectorAll('#drills label').length === 5");
        assertThat(browser.text("#drills")).contains("Three short ones").contains("3 stations, 1.00 m to 2.00 m; 3 balls at each");
    }

    @Test
    void aDrillFileWithFaultsIsShownWithThemBesideItsLines() {
        browser.size(390, 844).open(url("/drills"));
        browser.await("document.querySelectorAll('#presets li').length === 4");
        browser.click("#new");
        browser.value("document.querySelector('#text-part').open = true");
        type("#text", "name = \"Odd\"\n\n[stations]\nat_mm = [1000, 20]\n\n[balls]\ncount = 2\nsupply = \"every-station\"\n\n[advance]\nholed = 1\n");
        browser.awaitText("#faults", "stations.at_mm").awaitText("#faults", "Line 4");
        assertThat(browser.text("#lines [data-wrong]")).isEqualTo("4");
        type("#text", "name = \"Odd\"\n[stations]\nat_mm = [1000, 2000]\n[balls]\ncount = 2\nsupply = \"every-station\"\n[advance]\nholed = 1\n");

        browser.awaitText("#edit-words", "2 stations: 1.00 m, 2.00 m.");
        assertThat(browser.value("document.querySelector('#f-at').value").asText()).isEqualTo("1  2");
    }

    private void openControl() {
        browser.size(390, 844).open(url("/control/home/" + name));
        browser.await("document.querySelector('#link').dataset.state === 'live'");
    }

    private void startAlone(String player) {
        browser.await("!document.querySelector('#start').hidden");
        add(player);
        browser.click("#go");
        browser.awaitText("#name", player);
    }

    private void add(String player) {
        type("#who", player);
        browser.click("#add");
        browser.awaitText("#chosen", player);
    }

    private static void type(String field, String text) {
        browser.await("document.querySelector('" + field + "')");
        browser.value("(f => { f.value = '" + text.replace("\n", "\\n") + "'; f.dispatchEvent(new Event('input', { bubbles: true })) })"
                + "(document.querySelector('" + field + "'))");
    }

    private static void click(String selector) {
        browser.await("document.querySelector('" + selector + "')");
        browser.click(selector);
    }

    private static String focused() {
        return browser.value("document.activeElement.id").asText();
    }

    private String url(String path) {
        return "http://127.0.0.1:" + host.port() + path;
    }
}
