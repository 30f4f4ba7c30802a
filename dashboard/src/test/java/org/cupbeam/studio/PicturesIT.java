package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.cupbeam.studio.seed.Size;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Pages of a studio that has been open for a year, as the documents show them: on a phone and on a wide screen. */
@Timeout(120)
class PicturesIT {
    /** Of plain text against its ground: WCAG 2.2, success criterion 1.4.3. */
    private static final double READABLE = 4.5;
    private static final int STEPS = 5;

    @TempDir
    static Path folder;
    private static Browser browser;
    private static MadeUpStudio studio;

    @BeforeAll
    static void open() throws Exception {
        browser = new Browser().calm();
        studio = new MadeUpStudio(folder, new Size(3, 5, 8, 6));
    }

    @AfterAll
    static void close() throws Exception {
        browser.close();
        studio.close();
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            drills,  /drills,        #presets li
            players, /players,       #rows tr
            player,  /player/PLAYER, #main .trail li
            run,     /run/RUN,       #visits li
            report,  /report/PLAYER, #far tr
            usage,   /usage,         #heat-body tr
            leagues, /leagues,       #leagues li
            league,  /league/1,      #all tr
            health,  /health,        #lanes li
            rig,     /health/LANE,   #sensors tr
            """)
    void isDrawnAndHasItsPicture(String name, String path, String drawn) throws Exception {
        String url = studio.pages.url(path.replace("PLAYER", "" + studio.player).replace("RUN", "" + studio.run)
                .replace("LANE", MadeUpStudio.LANE));
        browser.size(390, 844).open(url).await("document.querySelector('" + drawn + "')");
        browser.screenshot(Pictures.of(name + "-phone"));
        browser.size(1920, 1080);
        browser.screenshot(Pictures.of(name + "-wall"));
        assertThat(browser.complaints()).isEmpty();
    }

    /** On a phone and on a wide screen; the run's first putt was holed. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            /usage,       #figs b,     '#said',          '.top .row'
            /run/RUN,     #line text,  '#line circle',   '#line text[style*="--in"]'
            """)
    void leavesRoomBetween(String path, String drawn, String below, String above) {
        browser.size(390, 844).open(studio.pages.url(path.replace("RUN", "" + studio.run)))
                .await("document.querySelector('" + drawn + "')");
        for (int width : new int[] {390, 1920}) {
            browser.size(width, 1080).await("innerWidth === " + width);
            browser.await("[...document.querySelectorAll('" + above + "')].some(each => each.getClientRects().length) &&"
                    + " [...document.querySelectorAll('" + below + "')].every(one => [...document.querySelectorAll('" + above + "')]"
                    + ".every(other => other.getBoundingClientRect().bottom < one.getBoundingClientRect().top"
                    + " || other.getBoundingClientRect().left >= one.getBoundingClientRect().right))");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {390, 1920})
    void holdsTheHoleOnItsStrip(int width) {
        browser.size(width, 844).open(studio.pages.url("/health/" + MadeUpStudio.LANE)).await("document.querySelector('#sensors tr')");
        browser.await("(hole => (strip => hole.top >= strip.top && hole.bottom <= strip.bottom)"
                + "(document.querySelector('#line .turf').getBoundingClientRect()))"
                + "(document.querySelector('#line .hole').getBoundingClientRect())");
    }

    /** Every shade of the map of hours, in the dark and by day. */
    @Test
    void whatStandsInTheMapOfHoursCanBeReadOnEveryShade() {
        browser.size(1920, 1080).open(studio.pages.url("/usage")).await("document.querySelector('#heat-body td[data-step]')");
        for (String light : new String[] {"dark", "day"}) {
            browser.value("document.documentElement.dataset.light = '" + light + "'");
            for (int step = 0; step < STEPS; step++) {
                JsonNode seen = browser.value("(() => { const cell = document.querySelector('#heat-body td[data-step]');"
                        + " cell.dataset.step = '" + step + "'; const style = getComputedStyle(cell);"
                        + " const pen = document.createElement('canvas').getContext('2d', { willReadFrequently: true });"
                        + " return [style.backgroundColor, style.color].map(each => { pen.fillStyle = getComputedStyle(document.body).backgroundColor;"
                        + " pen.fillRect(0, 0, 1, 1); pen.fillStyle = getComputedStyle(document.documentElement).backgroundColor;"
                        + " pen.fillRect(0, 0, 1, 1); pen.fillStyle = each;"
                        + " pen.fillRect(0, 0, 1, 1); return [...pen.getImageData(0, 0, 1, 1).data]; }); })()");
                assertThat(contrast(seen.get(0), seen.get(1))).as("%s, shade %s: %s", light, step, seen)
                        .isGreaterThanOrEqualTo(READABLE);
            }
        }
    }

    /** The contrast ratio of WCAG 2.2. */
    private static double contrast(JsonNode one, JsonNode other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(JsonNode rgb) {
        return 0.2126 * linear(rgb.get(0)) + 0.7152 * linear(rgb.get(1)) + 0.0722 * linear(rgb.get(2));
    }

    private static double linear(JsonNode channel) {
        double share = channel.asDouble() / 255;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }
}
