package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Base64;
import java.util.Map;
import java.util.Random;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Source;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.store.GreenTest;
import org.cupbeam.studio.store.Shelf;
import org.cupbeam.studio.usage.OpeningHours;
import org.cupbeam.studio.usage.StudioTime;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The greens' speeds and the card for the wall, in a real browser. */
@Timeout(120)
class GreenIT {
    private static final Topics LANE = new Topics("home", "lane-1");
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
        pages.lanes.score(LANE, Scenes.free(Scenes.HOLED));
        pages.lanes.health(LANE, Scenes.online(1, "j1"));
    }

    @AfterEach
    void stop() {
        pages.close();
    }

    @Test
    void theCardFollowsTheLaneTellsEachStationAndFitsAPhone() throws Exception {
        for (int width : new int[] {390, 1920}) {
            open(width, "/card?side=2&from=914.4,1828.8,2743.2,3657.6,4572");
            browser.awaitText("#for", "Green 9.4 ft (2.87 m), as the lane reads it");
            assertThat(browser.text("#for")).contains("2.0 % falling to the left").contains("0.5 % uphill");
            assertThat(browser.value("document.querySelectorAll('#rows tr').length").asInt()).isEqualTo(5);
            assertThat(browser.text("#rows tr:nth-child(3)")).contains("2.74 m").contains("right").contains("m/s");
            assertThat(browser.value("document.querySelectorAll('#plan .way').length").asInt()).isEqualTo(5);
            fits(width);
            browser.screenshot(Pictures.of("card-" + width));
        }
        browser.click("#nav .switches button");
        browser.awaitText("#rows tr:nth-child(3)", "9 ft");
        assertThat(browser.text("#rows tr:nth-child(3)")).contains("ft/s");
        assertThat(browser.text("#for")).contains("Green 9.4 ft,");
        browser.click("#nav .switches button");
    }

    @Test
    void aSpeedCanBeTypedAndADrillsStationsTaken() {
        open(1920, "/card");
        browser.awaitText("#for", "as the lane reads it");
        browser.click("[name=source][value=typed]");
        browser.value(typed("stimp", "11"));
        browser.awaitText("#for", "Green 11.0 ft (3.35 m) \u00b7");
        browser.value(typed("from", "1,5 3"));
        browser.awaitText("#rows tr:nth-child(1)", "1.50 m");
        browser.value(typed("drill", "0"));
        browser.await("document.querySelectorAll('#rows tr').length >= 8");
        browser.value(typed("side", "9"));
        browser.awaitText("#told", "does not stop");
        browser.awaitText("#said", "no card");
    }

    @Test
    void theCardPrintsOnOnePageAndItsDrawingStandsByItself() throws Exception {
        open(1920, "/card?side=2&from=914.4,1828.8,2743.2,3657.6,4572,5486.4,6400.8,7315.2,8229.6,9144");
        browser.awaitText("#for", "as the lane reads it");
        JsonNode printed = browser.call("Page.printToPDF", Map.of("printBackground", true, "preferCSSPageSize", true));
        byte[] pdf = Base64.getDecoder().decode(printed.get("data").asText());
        Files.createDirectories(Path.of("target", "pictures"));
        Files.write(Path.of("target", "pictures", "card.pdf"), pdf);
        assertThat(Pattern.compile("/Type\\s*/Page\\b").matcher(new String(pdf, StandardCharsets.ISO_8859_1)).results()
                .count()).isEqualTo(1);

        browser.value("(async () => { const keep = await import('/js/keep.js');"
                + "window.kept = keep.text(document.getElementById('plan')); })()");
        String svg = browser.value("window.kept").asText();
        assertThat(svg).startsWith("<svg").contains("stroke=\"rgb(").doesNotContain("class=").doesNotContain("var(");
        assertThat(browser.value("(async () => { const image = new Image();"
                + "image.src = 'data:image/svg+xml,' + encodeURIComponent(window.kept); await image.decode();"
                + "return image.width; })()").asInt()).isGreaterThan(900);
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void aGreenIsToldAcrossTheDayAndOverDaysAndItsRangeIsSetHere() throws Exception {
        plays(14);
        for (int width : new int[] {390, 1920}) {
            open(width, "/green/home/lane-1");
            browser.awaitText("#said", "The green runs 9.4 ft (9.0 to 9.8)");
            browser.awaitText("#days-said", "14 days");
            browser.value("document.getElementById('low').value = ''");
            set("low", "10");
            set("high", "11");
            browser.click("#range button");
            browser.awaitText("#alert", "slower than the 10.0 to 11.0 ft wanted");
            browser.awaitText("#days-said", "surely out of range, shown as triangles");
            fits(width);
            browser.screenshot(Pictures.of("green-" + width));
        }
        open(390, "/green");
        browser.awaitText("#lanes", "slower than the 10.0 to 11.0 ft wanted");
        fits(390);
        browser.screenshot(Pictures.of("greens-390"));
        open(390, "/health");
        browser.awaitText("#lanes", "The green runs 9.4 ft, slower");
        open(1920, "/green/home/lane-1");
        browser.awaitText("#said", "The green runs");
        browser.click("#before");
        browser.awaitText("#said", "The green ran");
        assertThat(browser.value("document.querySelector('#day-csv').href").asText()).contains("day=2026-11-24");
    }

    @Test
    void theCardsDrawingIsTakenAlongAsAPicture() throws Exception {
        Path downloads = Files.createDirectory(folder.resolve("downloads"));
        browser.call("Page.setDownloadBehavior", Map.of("behavior", "allow", "downloadPath", downloads.toString()));
        open(1920, "/card?side=2&from=914.4,1828.8,2743.2");
        browser.awaitText("#for", "as the lane reads it");
        browser.value("[...document.querySelectorAll('#keep button')].find(each => each.textContent.includes('PNG')).click()");
        Path file = downloads.resolve("card-lane-1.png");
        long untilNs = System.nanoTime() + 20_000_000_000L;
        while (!Files.exists(file) && System.nanoTime() < untilNs) {
            Thread.sleep(50);
        }

        BufferedImage picture = ImageIO.read(file.toFile());
        int wide = browser.value("Number(document.getElementById('plan').getAttribute('viewBox').split(' ')[2])").asInt();
        assertThat(picture.getWidth()).as("at twice its size on the page").isEqualTo(2 * wide);
        assertThat(IntStream.range(0, picture.getWidth() * picture.getHeight()).map(i ->
                picture.getRGB(i % picture.getWidth(), i / picture.getWidth())).distinct().count()).as("colours").isGreaterThan(20);
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void theSlopeAcrossIsTheRigFilesWhereItSaysSoAndTheCardSaysWhereItComesFrom() {
        open(1920, "/card");
        browser.awaitText("#for", "0.5 % uphill").awaitText("#slopes-from", "Along the line: as the lane's rig file has it. "
                + "Across it: its rig file says nothing");
        pages.lanes.score(LANE, Scenes.sloping(-1.5));
        open(1920, "/card");
        browser.awaitText("#for", "1.5 % falling to the right").awaitText("#slopes-from", "Across it: as the lane's rig file has it");
        assertThat(browser.value("document.getElementById('side').value").asText()).isEqualTo("1.5");
        browser.value(typed("side", "3"));
        browser.awaitText("#for", "3.0 % falling to the right").awaitText("#slopes-from", "Across it: as typed");
    }

    @Test
    void theLastTestWithRolledBallsStandsAmongTheDays() throws Exception {
        plays(14);
        pages.store.writing(h -> new GreenTest(Instant.parse("2026-11-20T23:30:00Z").toEpochMilli(), 9.7, 9.5, 9.9, 0.4, 8, "Kim")
                .keep(h, LANE));
        open(1920, "/green/home/lane-1");
        browser.awaitText("#days-said", "The square is the last test with rolled balls, on Nov 21: 9.7 ft");
        assertThat(browser.value("document.querySelectorAll('#days-plot rect.test').length").asInt()).isEqualTo(1);
        browser.screenshot(Pictures.of("green-tested"));
        open(1920, "/green/home/lane-1?day=2026-11-20");
        browser.awaitText("#days-said", "Each day's last reading");
        assertThat(browser.value("document.querySelectorAll('#days-plot .test').length").asInt()).as("not yet").isZero();
        assertThat(browser.complaints()).isEmpty();
    }

    /** Whoever reads is in New York; the studio is in Berlin, where on 25 October half past two came twice. */
    @Test
    void timesAreTheStudiosWhereverTheReaderIsAndAsItsClocksAreSet() {
        ScriptedLane lane = new ScriptedLane("lane-1", "j1");
        long toNight = Duration.between(lane.wall(), Instant.parse("2026-10-24T22:30:00Z")).toSeconds();
        pages.keep(lane.passes(toNight).starts("r1", null, "Ada", 1), lane.passes(7_200).holes("r1", null, "Ada", 1),
                lane.passes(3_600).misses("r1", null, "Ada", 2, 300));
        pages.store.writing(h -> Shelf.add(h, ScriptedLane.LADDER, "Kim", Instant.parse("2026-11-25T01:30:00Z").toEpochMilli()));
        browser.call("Emulation.setTimezoneOverride", Map.of("timezoneId", "America/New_York"));
        try {
            open(1920, "/green/home/lane-1?day=2026-10-25");
            browser.awaitText("#day-said", "2 readings, the last at 02:30 AM");
            open(1920, "/runs");
            browser.awaitText("main", "Oct 25").awaitText("main", "12:30 AM");
            open(390, "/control/home/lane-1");
            browser.awaitText("#putts", "02:30 AM");
            assertThat(browser.value("[...document.querySelectorAll('#putts time')].map(e => e.textContent).join()").asText())
                    .matches("02:30.AM,02:30.AM");
            open(1920, "/drills#own-1");
            browser.awaitText("#one-by", "Changed by Kim, Nov 25, 2026");
            pages.store.writing(h -> new StudioTime(ZoneId.of("Pacific/Auckland"), OpeningHours.USUAL).set(h, 0));
            open(1920, "/card");
            browser.awaitText("#made", "Made on November 26, 2026");
        } finally {
            browser.call("Emulation.setTimezoneOverride", Map.of("timezoneId", ""));
        }
    }

    /** Evenings until today, a putt every ten minutes, on a green that dries over the days and over each evening. */
    private void plays(int days) {
        Random random = new Random(5);
        Source source = new Source("home", "lane-1", "j1");
        long sequence = 0;
        for (int day = days - 1; day >= 0; day--) {
            Instant evening = Instant.parse("2026-11-25T15:00:00Z").minusSeconds(day * 86_400L);
            for (int minute = 0; minute < 330; minute += 10) {
                double ft = 10.4 - 0.06 * (days - day) + 0.001 * minute + 0.02 * random.nextGaussian();
                pages.keep(new Event(source, ++sequence, evening.plusSeconds(minute * 60L), new Data.Attempt(
                        new Stamp("b" + day, minute * 60_000_000_000L, Stamp.Clock.SYNCHRONISED), Scenes.MISSED, null,
                        Tags.NONE, new GreenNow(ft, Math.max(0.06, 0.18 - 0.004 * minute), 0.5))));
            }
        }
    }

    private void fits(int width) {
        assertThat(browser.value("document.documentElement.scrollWidth").asInt()).isLessThanOrEqualTo(width);
        assertThat(browser.complaints()).isEmpty();
    }

    private void set(String id, String value) {
        browser.value("document.getElementById('" + id + "').value = '" + value + "'");
    }

    private static String typed(String id, String value) {
        return "(e => { e.value = '" + value + "'; e.dispatchEvent(new Event('change', { bubbles: true })); })"
                + "(document.getElementById('" + id + "'))";
    }

    private void open(int width, String page) {
        browser.size(width, width < 600 ? 1600 : 1080).open(pages.url(page));
    }
}
