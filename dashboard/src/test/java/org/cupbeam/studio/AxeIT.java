package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.cupbeam.studio.seed.Size;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** No page keeps anybody out: nothing serious by axe-core's rules, on a phone and on a wall, in the dark and by day. */
@Timeout(120)
class AxeIT {
    /** A page: where it is, what shows that it is drawn, and what is done to it before it is looked at. */
    private record Look(String path, String drawn, String... steps) {
        @Override
        public String toString() {
            return path + (steps.length == 0 ? "" : ", " + steps[0].replaceAll("[^A-Za-z -]", ""));
        }
    }

    private static final int WIDEST_PHONE = 390;
    private static Browser browser;
    private static MadeUpStudio studio;
    private static Axe axe;

    @TempDir
    static Path folder;

    @BeforeAll
    static void open() throws Exception {
        browser = new Browser().calm();
        studio = new MadeUpStudio(folder, new Size(2, 4, 3, 2));
        axe = new Axe();
    }

    @AfterAll
    static void close() throws Exception {
        browser.close();
        studio.close();
    }

    /** A page more is a line more. */
    static Stream<Look> looks() {
        String lane = MadeUpStudio.LANE;
        return Stream.of(
                new Look("/lanes", "#lanes li"),
                new Look("/board/" + lane, "#rows > li"),
                new Look("/board/home/nobody", "#name"),
                new Look("/control", "#lanes li"),
                new Look("/control/" + lane, "#sides > li"),
                new Look("/control/" + lane, "#sides > li", "#miss-open"),
                new Look("/control/" + lane, "#sides > li", "#new", "#adjust summary", "#lie summary"),
                new Look("/drills", "#presets li"),
                new Look("/drills#preset-ladder", "#one-try .lines li"),
                new Look("/drills", "#presets li", "#new", "#text-part summary"),
                new Look("/players", "#rows tr"),
                new Look("/player/" + studio.player, "#main table td, #main dd, #main .trail li"),
                new Look("/report/" + studio.player, "#far tr"),
                new Look("/insight", "#players li"),
                new Look("/insight/" + studio.player, "#run .bar", "#curve-take summary"),
                new Look("/advice/" + studio.player, "#turns .dot"),
                new Look("/runs", "#rows tr"),
                new Look("/run/" + studio.run, "#visits li"),
                new Look("/usage", "#heat-body tr"),
                new Look("/leagues", "#leagues li"),
                new Look("/leagues", "#leagues li", "#open summary"),
                new Look("/league/1", "#all tr"),
                new Look("/health", "#lanes li"),
                new Look("/health/" + lane, "#sensors tr"),
                new Look("/green", "#lanes li"),
                new Look("/green/" + lane, "#day-plot .dot"),
                new Look("/green/" + lane + "/test", "#name"),
                new Look("/card?side=2", "#rows tr"),
                new Look("/staff", "#roles dt"),
                new Look("/sign-in", "#renew:not([hidden])"),
                new Look("/no-such-page", "h1"));
    }

    @ParameterizedTest
    @MethodSource("looks")
    void keepsNobodyOut(Look look) {
        List<String> grave = new ArrayList<>();
        for (int width : new int[] {360, WIDEST_PHONE, 1920}) {
            open(look, width);
            int shown = browser.value("document.documentElement.scrollWidth").asInt();
            if (shown > width) {
                grave.add("goes sideways to " + shown + " px");
            }
            if (width != 360) {
                grave.addAll(axe.findings(browser));
                browser.value("document.documentElement.dataset.light = 'day'");
                axe.contrast(browser).forEach(each -> grave.add("by day, " + each));
            }
            grave.replaceAll(each -> each.startsWith(" ") ? each : " " + width + " px: " + each);
        }
        assertThat(grave).isEmpty();
        assertThat(browser.complaints().replaceAll(".*no-such-page.*", "").strip()).isEmpty();
    }

    @Test
    void findsWhatDoesKeepSomebodyOut() {
        browser.size(WIDEST_PHONE, 844).open(studio.pages.url("/lanes"));
        browser.value("document.querySelector('main').append(Object.assign(document.createElement('button'), { id: 'mute' }),"
                + " Object.assign(document.createElement('p'), { id: 'faint', textContent: 'faint' }))");
        browser.value("document.getElementById('faint').style.color = 'rgb(60, 60, 60)'");

        assertThat(axe.findings(browser)).anyMatch(each -> each.startsWith("button-name at [\"#mute\"]"))
                .anyMatch(each -> each.startsWith("color-contrast at [\"#faint\"]"));
        assertThat(axe.contrast(browser)).hasSize(1);
    }

    private static void open(Look look, int width) {
        browser.size(width, width <= WIDEST_PHONE ? 844 : 1080).open(studio.pages.url(look.path()));
        browser.await("document.querySelector('" + look.drawn() + "')");
        for (String step : look.steps()) {
            browser.click(step);
        }
    }
}
