package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.cupbeam.lane.Lane;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A lane run with Tab, Enter, space and arrows alone: whoever does always sees where they are, and is never sent back. */
@Timeout(120)
class KeyboardIT {
    private static final int MOST_TABS = 60;
    /** What is wrong with how what has the focus is seen: no outline, out of sight, something over it; or nothing. */
    private static final String UNSEEN = "(() => { const it = document.activeElement; if (it === document.body) return '';"
            + " const shown = it.matches('input[type=radio]') ? it.nextElementSibling : it;"
            + " const box = shown.getBoundingClientRect(); const style = getComputedStyle(shown);"
            + " const over = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);"
            + " const wrong = style.outlineStyle === 'none' || parseFloat(style.outlineWidth) < 2 ? 'no outline'"
            + " : !over ? 'out of sight'"
            + " : shown.contains(over) || over === it ? '' : 'under ' + over.outerHTML;"
            + " return wrong && it.outerHTML + ': ' + wrong + ' at ' + box.y; })()";

    @TempDir
    private Path folder;
    private EmbeddedBroker broker;
    private Host host;
    private Lane lane;
    private Browser browser;

    @BeforeEach
    void start() throws Exception {
        broker = new EmbeddedBroker(0);
        host = Host.start(Database.file(folder.resolve("studio.db")), broker.uri(), "host",
                new Door("127.0.0.1", 0, StaffPin.quick(folder.resolve("staff-pin"))));
        lane = SilentLane.start("keys", folder, broker.uri());
        browser = new Browser().calm().size(390, 844).open("http://127.0.0.1:" + host.port() + "/control/home/keys");
        browser.await("document.querySelector('#drills input') && !document.querySelector('#start').hidden");
    }

    @AfterEach
    void stop() throws Exception {
        browser.close();
        lane.close();
        host.close();
        broker.close();
    }

    @Test
    void aDuelIsStartedAndCorrected() {
        add("Ada");
        add("Bo");
        tabTo("it.name === 'drill'");
        press("ArrowDown");
        assertThat(at("document.querySelector('#drills :checked') === it")).as("the focus moves with the choice").isTrue();
        press("ArrowUp");
        assertThat(at("it.parentElement.innerText.includes('Putter-length ladder') && it.checked")).isTrue();
        tabTo("it.matches('#adjust summary')");
        press("Enter");
        tabTo("it.ariaLabel === 'Fewer'");
        press(" ");
        press("Enter");
        tabTo("it.name === 'penalty'");
        press("ArrowRight");
        tabTo("it.id === 'go'");
        browser.awaitText("#go-hint", "Putter-length ladder, 4 balls, lose a ball");
        press("Enter");
        browser.awaitText("#name", "Ada").await("document.activeElement.id === 'name'");

        enterAMiss();
        browser.awaitText("#where", "3 balls left");
        tabTo("it.id === 'take-back'");
        press("Enter");
        browser.awaitText("#take-back", "Yes, Ada: missed");
        press("Enter");
        browser.awaitText("#where", "4 balls left").await("document.activeElement.id === 'miss-open'");
        tabTo("it.id === 'pass'");
        press("Enter");
        browser.awaitText("#name", "Bo");
        tabTo("it.innerText === 'Undo'");
        browser.await("document.activeElement.scrollWidth <= document.activeElement.clientWidth");
        press("Enter");
        browser.awaitText("#name", "Ada").await("document.activeElement.id === 'pass'");
        end();
    }

    private void end() {
        enterAMiss();
        browser.await("document.querySelector('#putts summary')");
        tabTo("it.matches('#putts summary')");
        press("Enter");
        tabTo("it.innerText === 'Strike from the record'");
        press("Enter");
        press("Enter");
        browser.awaitText("#putts .struck", "struck by staff");
        assertThat(at("it !== document.body")).as("led on from the button that is gone").isTrue();
        tabTo("it.id === 'end'");
        press("Enter");
        press("Enter");
        browser.awaitText("#turn-said", "Duel over").await("document.activeElement.id === 'again'");
        press("Enter");
        press("Enter");
        browser.awaitText("#where", "4 balls left");
        assertThat(at("it !== document.body && it.id !== 'again'")).isTrue();
    }

    @Test
    void whatIsBeingDoneWithAPuttIsLeftAloneWhenTheNextComes() {
        add("Ada");
        tabTo("it.id === 'go'");
        press("Enter");
        browser.awaitText("#name", "Ada").await("document.activeElement.id === 'name'");
        enterAMiss();
        browser.await("document.querySelectorAll('#putts details').length === 1");
        tabTo("it.matches('#putts summary')");
        press("Enter");
        tabTo("it.innerText === 'Strike from the record'");
        browser.value("import('/js/orders.js').then(m => { m.order('home/keys', { command: 'miss', finish_mm: null }) })");

        browser.await("document.querySelectorAll('#putts details').length === 2");
        assertThat(at("it.innerText === 'Strike from the record' && it.closest('details').open")).isTrue();
    }

    private void add(String name) {
        if (!at("it.id === 'who'")) {
            tabTo("it.id === 'who'");
        }
        browser.call("Input.insertText", Map.of("text", name));
        press("Enter");
        browser.awaitText("#chosen", name);
    }

    private void enterAMiss() {
        tabTo("it.id === 'miss-open'");
        press("Enter");
        browser.await("document.activeElement.id === 'miss-short'");
        press("Enter");
        browser.awaitText("#last", "entered by hand").await("document.activeElement.id === 'miss-open'");
    }

    /** On with Tab until it is there, and seen at every step of the way. */
    private void tabTo(String wanted) {
        for (int i = 0; i < MOST_TABS; i++) {
            press("Tab");
            assertThat(browser.value(UNSEEN).asText()).as("on the way to where " + wanted).isEmpty();
            if (at(wanted)) {
                return;
            }
        }
        throw new AssertionError("Tab does not lead to where " + wanted);
    }

    private boolean at(String condition) {
        return browser.value("(it => Boolean(" + condition + "))(document.activeElement)").asBoolean();
    }

    private void press(String key) {
        browser.press(key);
    }
}
