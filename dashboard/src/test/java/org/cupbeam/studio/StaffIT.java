package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** An owner gives names to people with a browser, and they sign in; on a phone and on a wide screen, in the dark and by day. */
@Timeout(180)
class StaffIT {
    private static final String HOSTILE = "<img src=x onerror=struck=1>";

    @TempDir
    private Path folder;
    private EmbeddedBroker broker;
    private Host host;
    private Browser browser;

    @BeforeEach
    void start() throws Exception {
        StaffPin pin = StaffPin.quick(folder.resolve("staff-pin"));
        pin.set("739205");
        broker = new EmbeddedBroker(0);
        host = Host.start(Database.file(folder.resolve("studio.db")), broker.uri(), "host", new Door("127.0.0.1", 0, pin));
        browser = new Browser().calm().size(390, 844);
    }

    @AfterEach
    void stop() throws Exception {
        browser.close();
        host.close();
        broker.close();
    }

    @Test
    void namesAreGivenTakenAndSignedInWith() throws Exception {
        browser.open(url("/staff")).await("document.querySelector('#enter:not([hidden])')");
        fill("pin", "739205");
        submit("enter");
        browser.await("location.pathname === '/staff' && document.querySelector('#said')?.textContent.includes('first one')");
        assertThat(browser.value("document.querySelector('#what').children.length").asInt()).as("the first is an owner of all").isZero();
        adds("Ada", null);
        browser.await("document.querySelectorAll('#people > li').length === 1 && document.querySelector('#people .self')");
        adds("Carl", "coach");
        adds(HOSTILE, "desk");
        browser.await("document.querySelectorAll('#people > li').length === 3");
        assertThat(browser.value("document.querySelector('#people').innerText.includes('" + HOSTILE + "')").asBoolean()).isTrue();
        assertThat(browser.value("document.querySelector('#people img') === null && window.struck === undefined").asBoolean()).isTrue();
        keepsNobodyOut();

        browser.size(390, 844).value("[...document.querySelectorAll('#people > li')].find(each => each.innerText.startsWith('Carl'))"
                + ".querySelectorAll('button').forEach(each => { if (each.innerText === 'Take away') each.click(); })");
        browser.awaitText("#told", "Carl signs in no more.").await("document.querySelectorAll('#people > li').length === 2");
        browser.value("[...document.querySelectorAll('#told button')].find(each => each.innerText === 'Undo').click()");
        browser.awaitText("#told", "Carl signs in again.").await("document.querySelectorAll('#people > li').length === 3");

        signOut();
        signIn("Carl", "/control");
        browser.await("document.documentElement.dataset.may");
        assertThat(seen("a[href=\"/insight\"]")).isTrue();
        assertThat(seen("a[href=\"/usage\"]") || seen("a[href=\"/staff\"]")).as("what is for others").isFalse();
        browser.open(url("/staff")).awaitText("h1", "Not with your role");
        assertThat(browser.complaints().lines().filter(line -> !line.contains("/staff")).toList()).isEmpty();
    }

    /** With the keys alone: from the field for the name to the button, and what came of it is said. */
    @Test
    void isDoneWithTheKeysAlone() throws Exception {
        browser.open(url("/staff")).await("document.querySelector('#enter:not([hidden])')");
        fill("pin", "739205");
        submit("enter");
        browser.await("location.pathname === '/staff' && document.querySelector('#said')?.textContent.includes('first one')");
        browser.value("document.getElementById('name').focus()");
        browser.call("Input.insertText", Map.of("text", "Ada"));
        browser.press("Tab");
        browser.call("Input.insertText", Map.of("text", "Ada-48151623"));
        browser.press("Enter");
        browser.awaitText("#told", "Added.").await("document.querySelector('#people .self')");
    }

    private void keepsNobodyOut() throws Exception {
        Axe axe = new Axe();
        List<String> grave = new ArrayList<>();
        for (int width : new int[] {360, 390, 1920}) {
            browser.size(width, width < 400 ? 844 : 1080).await("innerWidth === " + width);
            browser.value("document.querySelectorAll('#people details').forEach(each => { each.open = true; })");
            if (browser.value("document.documentElement.scrollWidth").asInt() > width) {
                grave.add("goes sideways at " + width);
            }
            for (String light : List.of("night", "day")) {
                browser.value("document.documentElement.dataset.light = '" + light + "'");
                axe.findings(browser).forEach(each -> grave.add(width + " px, " + light + ": " + each));
            }
        }
        assertThat(grave).isEmpty();
    }

    private void adds(String name, String roleOrNull) {
        fill("name", name);
        fill("secret", "Name-48151623");
        if (roleOrNull != null) {
            browser.value("document.querySelector('#what input[value=\"" + roleOrNull + "\"]').click()");
        }
        submit("new");
        browser.await("document.getElementById('name').value === '' && document.querySelector('#people').innerText.includes('" + name + "')");
    }

    private void signOut() {
        browser.open(url("/sign-in")).await("!document.querySelector('#leave').hidden");
        browser.value("document.getElementById('out').click()");
        browser.await("!document.querySelector('#named').hidden");
    }

    private void signIn(String name, String arrives) {
        fill("name", name);
        fill("secret", "Name-48151623");
        submit("named");
        browser.await("location.pathname.startsWith('" + arrives + "') && document.querySelector('#nav nav')");
    }

    private boolean seen(String selector) {
        return browser.value("getComputedStyle(document.querySelector('" + selector + "')).display !== 'none'").asBoolean();
    }

    private void fill(String id, String text) {
        browser.value("document.getElementById('" + id + "').value = '" + text + "'");
    }

    private void submit(String form) {
        browser.value("document.getElementById('" + form + "').requestSubmit()");
    }

    private String url(String path) {
        return "http://127.0.0.1:" + host.port() + path;
    }
}
