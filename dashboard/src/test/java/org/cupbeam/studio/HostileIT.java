package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.cupbeam.studio.HostileStudio.ATTRIBUTE;
import static org.cupbeam.studio.HostileStudio.DRAWING;
import static org.cupbeam.studio.HostileStudio.IMAGE;
import static org.cupbeam.studio.HostileStudio.LINK;
import static org.cupbeam.studio.HostileStudio.SCRIPT;

import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Hostile words on every page that shows any: they are read, and are nothing else. */
@Timeout(120)
class HostileIT {
    /** A page: where it is, what words of the hostile ones are to be read on it, and what is done first. */
    private record Look(String path, String read, String... steps) {
        @Override
        public String toString() {
            return path + (steps.length == 0 ? "" : ", " + steps[0].replaceAll("[^A-Za-z -]", ""));
        }
    }

    /** What ran, what was made, and what the policy had to hold back; empty where all stayed words. */
    private static final String HARM = """
            (() => {
              const harm = [...(window.heldBack ?? [])];
              if (window.struck !== undefined) harm.push('a script ran: ' + window.struck);
              for (const each of document.querySelectorAll('img, iframe, object, embed, base, style, meta[http-equiv], script:not([src])')) harm.push('made: ' + each.outerHTML);
              for (const each of document.querySelectorAll('*')) {
                for (const { name, value } of each.attributes) {
                  if (name.startsWith('on')) harm.push('acts on an event: ' + each.outerHTML);
                  if (/^(href|src|action|formaction|xlink:href|srcdoc)$/.test(name) && !/^(\\/|#|https?:\\/\\/127\\.0\\.0\\.1|blob:|$)/.test(value)) harm.push('leads elsewhere: ' + value);
                }
              }
              return harm;
            })()""";

    @TempDir
    static Path folder;
    private static Browser browser;
    private static HostileStudio studio;

    @BeforeAll
    static void open() throws Exception {
        browser = new Browser().calm().size(390, 844);
        browser.call("Page.addScriptToEvaluateOnNewDocument", Map.of("source",
                "window.heldBack = []; document.addEventListener('securitypolicyviolation', e => heldBack.push('held back: ' + e.violatedDirective + ' ' + e.blockedURI))"));
        studio = new HostileStudio(folder);
    }

    @AfterAll
    static void close() throws Exception {
        browser.close();
        studio.close();
    }

    /** A page more is a line more. */
    static Stream<Look> looks() {
        return Stream.of(
                new Look("/board/home/lane-1", IMAGE),
                new Look("/control/home/lane-1", DRAWING, "#putts summary"),
                new Look("/control/home/lane-1#new", SCRIPT, "#adjust summary"),
                new Look("/drills", DRAWING),
                new Look("/drills#own-1", DRAWING),
                new Look("/drills#own-1", DRAWING, "#one-acts .main", "#text-part summary"),
                new Look("/players", LINK),
                new Look("/player/2", SCRIPT),
                new Look("/report/1", IMAGE),
                new Look("/insight", ATTRIBUTE),
                new Look("/insight/1", IMAGE),
                new Look("/advice/1", IMAGE),
                new Look("/runs", SCRIPT, "#changes summary"),
                new Look("/run/1", IMAGE),
                new Look("/run/2", SCRIPT),
                new Look("/usage", ""),
                new Look("/leagues", IMAGE, "#open summary"),
                new Look("/league/1", DRAWING),
                new Look("/health", SCRIPT),
                new Look("/health/home/lane-1", SCRIPT),
                new Look("/card?side=2&lane=" + IMAGE.replace(" ", "%20"), "The lane reads"),
                new Look("/sign-in?to=javascript:window.struck=7", ""),
                new Look("/no-such-page/" + IMAGE.replace(" ", "%20"), ""));
    }

    @ParameterizedTest
    @MethodSource("looks")
    void staysWords(Look look) {
        browser.open(studio.pages.url(look.path().replace("<", "%3C").replace(">", "%3E")));
        for (String step : look.steps()) {
            browser.click(step);
        }
        browser.await("document.querySelector('h1').innerText.trim() !== ''");
        browser.await("[document.body.innerText, ...[...document.querySelectorAll('input, textarea')].map(each => each.value)].join('\\n')"
                + ".replaceAll('\\u00a0', ' ').includes(" + quoted(look.read()) + ")");

        assertThat(browser.value(HARM)).isEmpty();
        assertThat(browser.value("document.documentElement.scrollWidth").asInt()).as("goes sideways").isLessThanOrEqualTo(390);
        assertThat(browser.complaints().replaceAll(".*no-such-page.*", "").strip()).isEmpty();
    }

    /** A name that turns the direction of reading turns no word of ours. */
    @Test
    void noNameTurnsTheDirectionOfOtherWords() {
        for (String path : new String[] {"/board/home/lane-1", "/players", "/control/home/lane-1"}) {
            browser.open(studio.pages.url(path)).await("document.body.innerText.includes('<b>x</b>')");
            assertThat(browser.value("/[\\u202a-\\u202e\\u2066-\\u2069]/.test(document.body.textContent)").asBoolean()).as(path).isFalse();
        }
    }

    @Test
    void wouldSeeThem() {
        browser.open(studio.pages.url("/lanes"));
        assertThat(browser.value(HARM)).isEmpty();
        browser.value("document.querySelector('main').innerHTML += " + quoted(IMAGE + DRAWING + "<a href=" + LINK + ">x</a>"));
        browser.await("heldBack.length > 1");

        assertThat(browser.value(HARM).toString()).contains("held back: script-src-attr", "made: ", "acts on an event", "leads elsewhere: javascript:");
        browser.value("window.struck = 1");
        assertThat(browser.value(HARM).toString()).contains("a script ran");
    }

    private static String quoted(String text) {
        return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'";
    }
}
