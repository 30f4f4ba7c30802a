package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Base64;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The logbook, the report and the month in a real browser. */
@Timeout(120)
class LogbookIT {
    private static final String HOSTILE = "<img src=x onerror=alert(1)>";
    private static Browser browser;

    @TempDir
    Path folder;
    private Pages pages;

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
        ScriptedLane lane = new ScriptedLane("one", "j1");
        pages.keep(lane.starts("r1", null, HOSTILE, 1), lane.passes(10).holes("r1", null, HOSTILE, 1),
                lane.passes(10).misses("r1", null, HOSTILE, 2, 417), lane.passes(10).misses("r1", null, HOSTILE, 2, 1_300),
                lane.passes(10).holes("r1", null, HOSTILE, 2), lane.ends("r1", null, HOSTILE, 2, 4, 2, 858.5));
        pages.done("POST", "/api/player/1/notes", "{\"words\": \"<script>alert(2)</script>\"}");
    }

    @AfterEach
    void stop() {
        pages.close();
    }

    @Test
    void everyPageShowsHostileNamesAndNotesAsTextAndFitsAPhone() {
        for (String page : new String[] {"/players", "/runs", "/run/1", "/player/1", "/report/1", "/usage"}) {
            open(390, 844, page);
            if (!page.equals("/usage")) {
                browser.awaitText("#main", page.equals("/runs") ? "2 stations in 4 putts" : HOSTILE);
            }
            assertThat(browser.value("document.images.length + document.querySelectorAll('main script').length").asInt())
                    .as(page).isZero();
            assertThat(browser.value("document.documentElement.scrollWidth").asInt()).as(page).isLessThanOrEqualTo(390);
            assertThat(browser.complaints()).as(page).isEmpty();
        }
    }

    @Test
    void aRunIsReplayedPuttByPuttWithTheKeyboard() {
        open(1920, 1080, "/run/1");
        browser.awaitText("#putt-said", "Holed");
        assertThat(browser.text("#came")).contains("2 stations in 4 putts").contains("mean miss 86 cm");
        browser.value("document.getElementById('next').focus()");
        browser.press("Enter");
        browser.awaitText("#putt-said", "Missed, 42 cm past the hole");
        assertThat(browser.text("#line")).contains("42 cm");
        browser.press("Enter");
        browser.awaitText("#putt-said", "Past the limit");
        browser.value("document.querySelectorAll('#visits button')[1].focus()");
        browser.press("Enter");
        browser.awaitText("#putt-said", "Putt 2 of 4");
        assertThat(browser.value("document.activeElement.dataset.index").asText()).as("the focus stays").isEqualTo("1");
    }

    @Test
    void aPuttIsSetNotToCountAndItsStoryStaysOnThePage() {
        open(390, 844, "/run/1");
        browser.awaitText("#putt-said", "Putt 1 of 4");
        browser.click("#next");
        browser.awaitText("#putt-said", "Putt 2 of 4");
        browser.value("document.getElementById('reason').value = 'a dog ran by'");
        browser.click("#correct-do");

        browser.awaitText("#putt-said", "does not count");
        browser.awaitText("#putt-trail", "Set not to count by staff");
        assertThat(browser.text("#putt-trail")).contains("a dog ran by");
        assertThat(browser.text("#putt-said")).contains("Missed, 42 cm past the hole");
        browser.click("#correct-do");
        browser.awaitText("#putt-trail", "Set to count again");
    }

    @Test
    void theLogbooksAddressSaysWhatIsAskedForAndCanBeSent() {
        open(1920, 1080, "/runs?slope=uphill");
        browser.awaitText("#said", "1 run, the newest first");
        browser.value("(e => { e.value = 'level'; e.dispatchEvent(new Event('change', { bubbles: true })); })"
                + "(document.getElementById('slope'))");
        browser.awaitText("#said", "No run is like that");
        assertThat(browser.value("location.search").asText()).isEqualTo("?slope=level");
        assertThat(browser.value("document.querySelector('#take a').href").asText()).contains("slope=level");
    }

    /** 02:58 in summer time, in Berlin; whoever reads it sits in New York. */
    @Test
    void theNightOnWhichClocksAreChangedIsToldByTheStudiosClockWhereverItIsRead() {
        ScriptedLane lane = new ScriptedLane("one", "j2").boots("boot-2", Instant.EPOCH);
        pages.done("PUT", "/api/usage/hours", "{\"zone\": \"Europe/Berlin\", \"hours\": \"sun 00:00-24:00\"}");
        pages.keep(lane.setsClock(Instant.parse("2026-10-25T00:58:00Z")));
        pages.keep(lane.starts("n1", null, "Bo", 1), lane.holes("n1", null, "Bo", 1), lane.passes(240).holes("n1", null, "Bo", 2),
                lane.ends("n1", null, "Bo", 2, 2, 2, 0));
        browser.call("Emulation.setTimezoneOverride", Map.of("timezoneId", "America/New_York"));
        try {
            open(1920, 1080, "/run/2");
            browser.awaitText("#what", "Oct 25, 02:58");
            open(1920, 1080, "/report/2");
            browser.awaitText("#runs", "02:58");
            open(1920, 1080, "/runs");
            browser.awaitText("#main", "Oct 25, 02:58");
            open(1920, 1080, "/usage?month=2026-10");
            browser.awaitText("#heat-said", "Busiest: Sunday 2 to 3 (1 %)");
            browser.awaitText("#heat-said", "Hours by the clock of Europe/Berlin");
        } finally {
            browser.call("Emulation.setTimezoneOverride", Map.of("timezoneId", ""));
        }
    }

    @Test
    void aPlayerIsLookedForWhereThereAreTooManyForOneList() {
        open(390, 844, "/runs?slope=uphill");
        browser.awaitText("#said", "1 run");
        assertThat(browser.value("document.getElementById('finding').hidden").asBoolean()).as("not for one").isTrue();
        pages.enrol("Guest", 200);
        pages.enrol("Zoe", 1);
        String zoe = pages.get("/api/players?name=zoe").at("/rows/0/id").asText();

        open(390, 844, "/runs?player=" + zoe);
        browser.awaitText("#said", "No run is like that");
        assertThat(browser.value("document.getElementById('player').value").asText()).as("as asked").isEqualTo(zoe);
        assertThat(browser.value("document.documentElement.scrollWidth").asInt()).isLessThanOrEqualTo(390);
        browser.value("(e => { e.value = 'guest 19'; e.dispatchEvent(new Event('input', { bubbles: true })); })"
                + "(document.getElementById('find'))");
        browser.awaitText("#found", "10 players to choose below");
        assertThat(browser.value("document.getElementById('player').options.length").asInt()).isEqualTo(12);
        assertThat(browser.value("document.getElementById('player').value").asText()).as("stays chosen").isEqualTo(zoe);

        browser.value("document.getElementById('filter').reset()");
        browser.await("document.getElementById('player').options.length === 201");
        browser.awaitText("#said", "1 run");
        assertThat(browser.text("#found")).isEmpty();
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void aFileIsBroughtBackAndSaysWhatCameOfIt() {
        open(1920, 1080, "/runs");
        browser.awaitText("#said", "1 run");
        browser.value("(async () => { const file = await (await fetch('/api/record/export?as=json')).blob();"
                + "const list = new DataTransfer(); list.items.add(new File([file], 'record.json'));"
                + "document.getElementById('file').files = list.files; })()");
        browser.click("#bring button");

        browser.awaitText("#told", "rows were here already");
    }

    @Test
    void forgettingAPlayerAsksForTheName() {
        open(390, 844, "/player/1");
        browser.awaitText("#name", HOSTILE);
        browser.click("#forget");
        browser.click("#sure button[value=forget]");
        browser.awaitText("#sure-wrong", "That is not the name");
        browser.value("document.getElementById('again').value = " + quoted(HOSTILE));
        browser.click("#sure button[value=forget]");

        browser.awaitText("#name", "A player who was forgotten");
        assertThat(pages.get("/api/player/1").at("/player/name").isNull()).isTrue();
    }

    @Test
    void theReportAndTheMonthPrintOnOnePageEach() throws Exception {
        for (String page : new String[] {"/report/1", "/usage?month=2026-11"}) {
            open(1920, 1080, page);
            browser.awaitText("#main", page.startsWith("/report") ? "Where the misses stopped" : "By lane");
            browser.await("document.querySelector('#far tr, #heat-body tr')");
            JsonNode printed = browser.call("Page.printToPDF", Map.of("printBackground", true, "preferCSSPageSize", true));
            byte[] pdf = Base64.getDecoder().decode(printed.get("data").asText());
            Path file = Path.of("target", "pictures", page.replaceAll("\\W+", "-").substring(1) + ".pdf");
            Files.createDirectories(file.getParent());
            Files.write(file, pdf);

            assertThat(Pattern.compile("/Type\\s*/Page\\b").matcher(new String(pdf, StandardCharsets.ISO_8859_1)).results()
                    .count()).as(page).isEqualTo(1);
        }
    }

    @Test
    void theMonthsHeatMapIsATableWhoseNumbersCanBeRead() {
        pages.done("PUT", "/api/usage/hours", "{\"zone\": \"Europe/Berlin\", \"hours\": \"wed 19:00-20:00\"}");
        open(390, 844, "/usage?month=2026-11");

        browser.awaitText("#heat-said", "Busiest: Wednesday 19 to 20");
        assertThat(browser.value("document.querySelectorAll('#heat-body tr').length").asInt()).isEqualTo(1);
        assertThat(browser.value("document.querySelectorAll('#heat thead th[scope=col]').length").asInt()).isEqualTo(7);
        assertThat(browser.value("document.querySelector('#heat-body td:nth-child(4)').textContent").asText()).matches("\\d+");
        assertThat(browser.value("document.querySelector('#heat-body td:nth-child(2)').textContent").asText())
                .isEqualTo("closed");
    }

    private static String quoted(String text) {
        return "'" + text.replace("'", "\\'") + "'";
    }

    private void open(int width, int height, String page) {
        browser.size(width, height).open(pages.url(page));
    }
}
