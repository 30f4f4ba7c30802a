package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.cupbeam.studio.seed.Truth;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

/** What the numbers say of a made-up year's players, in a real browser: drawn, told, taken away and printed. */
@Timeout(240)
class InsightIT {
    private static final long SEED = 20;
    private static final Size SIZE = new Size(3, 10, 4, 2);
    private static final List<String> PLOTS = List.of("curve", "turns", "grid", "finish", "run");

    @TempDir
    static Path folder;
    private static Path downloads;
    private static Pages pages;
    private static Browser browser;
    private static Seed.Planted planted;

    @BeforeAll
    static void open() throws Exception {
        pages = new Pages(folder);
        planted = Seed.fill(pages.store, Pages.NOW.instant(), SEED, SIZE);
        browser = new Browser().calm();
        downloads = Files.createDirectory(folder.resolve("downloads"));
        browser.call("Page.setDownloadBehavior", Map.of("behavior", "allow", "downloadPath", downloads.toString()));
    }

    @AfterAll
    static void close() throws Exception {
        browser.close();
        pages.close();
    }

    @Test
    void thePlantedTurningPointIsMarkedOnTheTimeline() {
        Truth turning = truth(Truth.Course.TURNS);
        Instant turn = turning.turns().get(0);
        int player = id(turning);
        show(1920, "/insight/" + player, "#turns .dot");

        JsonNode marks = pages.get("/api/insight/" + player).at("/time/marks");
        assertThat(marks).as("seed " + SEED).hasSize(1);
        assertThat(Math.abs(marks.at("/0/at_ms").asLong() - turn.toEpochMilli())).as("days off")
                .isLessThan(TimeUnit.DAYS.toMillis(30));
        assertThat(browser.value("document.querySelectorAll('#turns .turn').length").asInt()).isEqualTo(1);
        assertThat(browser.text("#turns-said")).contains(marks.at("/0/said").asText());
        assertThat(browser.text("#said")).contains("of how the player putts now");
    }

    @Test
    void aPlayerInWhomNothingIsPlantedIsToldOfNoTurnAndNoWeakness() {
        Truth plain = planted.players().stream().filter(Truth::plain).findFirst().orElseThrow();
        JsonNode said = pages.get("/api/insight/" + id(plain));
        assertThat(said.at("/time/marks")).isEmpty();
        said.at("/strengths/kinds").forEach(kind -> assertThat(kind.path("verdict").asText()).isNotEqualTo("weak"));
    }

    @Test
    void everyPlotCanBeTakenAwayAsDrawnAsAPictureAndAsItsNumbers() throws Exception {
        int player = id(truth(Truth.Course.TURNS));
        JsonNode said = pages.get("/api/insight/" + player);
        for (String plot : PLOTS) {
            show(1920, "/insight/" + player, "#run .bar"); // a page may have ten files kept without being asked by hand
            String name = plot + "-" + player;
            Document drawing = DocumentBuilderFactory.newInstance().newDocumentBuilder()
                    .parse(new InputSource(new StringReader(Files.readString(taken(plot, name, "svg")))));
            assertThat(drawing.getDocumentElement().getTagName()).isEqualTo("svg");
            assertThat(drawing.getElementsByTagName("text").getLength()).as(plot).isPositive();
            assertThat(Files.readAllBytes(taken(plot, name, "png"))).as(plot)
                    .startsWith(0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n').hasSizeGreaterThan(8_000);
            List<String> lines = Files.readAllLines(taken(plot, name, "csv"));
            JsonNode rows = new ObjectMapper().readTree(taken(plot, name, "json").toFile());
            assertThat(lines).as(plot).hasSize(rows.size() + 1);
        }
        assertThat(Files.readAllLines(downloads.resolve("turns-" + player + ".csv"))).hasSize(1 + said.at("/time/points").size());
        assertThat(browser.value("document.querySelectorAll('#turns .dot').length").asInt())
                .isEqualTo(said.at("/time/points").size());
        List<String> misses = Files.readAllLines(downloads.resolve("finish-" + player + ".csv"));
        assertThat(misses).hasSize(1 + said.at("/finishes/misses").size());
        assertThat(misses.get(1).split(",")[2]).isEqualTo(said.at("/finishes/misses/0/finish_mm").asText());
        assertThat(browser.value("document.querySelectorAll('#finish :is(.miss, .past)').length").asInt())
                .isEqualTo(misses.size() - 1);
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void drillBallsTableAndRivalAreChosenInTheAddress() {
        int player = id(planted.players().get(0));
        int rival = id(planted.players().get(1));
        show(1920, "/insight/" + player + "?drill=ladder&balls=3&bench=tour&against=" + rival, "#run .bar");
        browser.awaitText("#duel-said", "duels");
        assertThat(browser.value("document.querySelectorAll('#curve .bench').length").asInt()).isEqualTo(1);
        assertThat(browser.text("#sources")).contains("Broadie").doesNotContain("90-golfer's");
        assertThat(browser.value("document.getElementById('balls').value").asText()).isEqualTo("3");
        browser.value("(e => { e.value = '6'; e.dispatchEvent(new Event('change')); })(document.getElementById('balls'))");
        browser.await("location.search.includes('balls=6')");
    }

    @Test
    void ofTenPuttsItSaysThatTheyAreTooFew() {
        ScriptedLane lane = new ScriptedLane("scripted", "few");
        Random random = new Random(1);
        pages.keep(lane.starts("f1", null, "Newcomer Ten", 1));
        for (int i = 0; i < 10; i++) {
            pages.keep(random.nextBoolean() ? lane.passes(20).holes("f1", null, "Newcomer Ten", 1)
                    : lane.passes(20).misses("f1", null, "Newcomer Ten", 1, 300));
        }
        int player = pages.get("/api/players?name=Newcomer").at("/rows/0/id").asInt();
        show(390, "/insight/" + player, "#run .bar");

        assertThat(browser.text("#said")).contains("10 putts").contains("Too few to say much");
        assertThat(browser.text("#turns-said")).contains("Too early to tell");
        assertThat(browser.text("#finish-said")).contains("too few to say");
        JsonNode near = pages.get("/api/insight/" + player).at("/curve/points/20");
        assertThat(near.path("high").asDouble() - near.path("low").asDouble()).as("a wide band").isGreaterThan(0.2);
        pages.done("POST", "/api/players", "{\"name\": \"Nobody Yet\"}");
        show(390, "/insight/" + pages.get("/api/players?name=Nobody").at("/rows/0/id").asInt(), "#advice li");
        assertThat(browser.text("#said")).isEqualTo("No putts yet.");
        assertThat(browser.value("document.getElementById('turns').closest('figure').hidden").asBoolean()).isTrue();
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void theReportCarriesTheNextStepsAndTheAdvicePrintsOnOnePage() throws Exception {
        int player = id(truth(Truth.Course.TURNS));
        show(1920, "/report/" + player, "#next li");
        assertThat(browser.text("#next")).contains(pages.get("/api/insight/" + player).at("/advice/0/what").asText());
        onePage("report-advised");
        show(1920, "/advice/" + player, "#turns .dot");
        assertThat(browser.text("#advice")).contains("Rule: ");
        onePage("advice");
    }

    @Test
    void picturesForThePhoneAndTheWall() throws Exception {
        int player = id(truth(Truth.Course.TURNS));
        show(1920, "/insight/" + player, "#run .bar");
        browser.screenshot(Pictures.of("insight-wall"));
        browser.value("scrollTo(0, 1000)");
        browser.screenshot(Path.of("target/pictures/insight-wall-2.png"));
        show(390, "/insight/" + player, "#run .bar");
        browser.screenshot(Pictures.of("insight-phone"));
        for (int i = 1; i < 6; i++) {
            browser.value("scrollTo(0, document.querySelectorAll('.plots > section')[" + (i - 1) + "].offsetTop - 20)");
            browser.screenshot(Path.of("target/pictures/insight-phone-" + i + ".png"));
        }
        assertThat(browser.value("document.documentElement.scrollWidth").asInt()).isLessThanOrEqualTo(390);
    }

    private static void onePage(String name) throws Exception {
        JsonNode printed = browser.call("Page.printToPDF", Map.of("printBackground", true, "preferCSSPageSize", true));
        byte[] pdf = Base64.getDecoder().decode(printed.get("data").asText());
        Path file = Path.of("target", "pictures", name + ".pdf");
        Files.createDirectories(file.getParent());
        Files.write(file, pdf);
        assertThat(Pattern.compile("/Type\\s*/Page\\b").matcher(new String(pdf, StandardCharsets.ISO_8859_1)).results()
                .count()).as(name).isEqualTo(1);
    }

    private static Path taken(String plot, String name, String kind) throws Exception {
        browser.click("#" + plot + "-take button[data-take=" + kind + "]");
        Path file = downloads.resolve(name + "." + kind);
        for (int tries = 0; tries < 400 && !Files.exists(file); tries++) {
            TimeUnit.MILLISECONDS.sleep(25);
        }
        assertThat(file).exists();
        return file;
    }

    private static Truth truth(Truth.Course course) {
        return planted.players().stream().filter(each -> each.course() == course).findFirst().orElseThrow();
    }

    private static int id(Truth truth) {
        return pages.store.read(h -> h.select("SELECT id FROM player WHERE name = ?", truth.player()).mapTo(int.class).one());
    }

    private static void show(int width, String page, String drawn) {
        browser.size(width, width < 600 ? 844 : 1080).open(pages.url(page));
        browser.await("document.querySelector('" + drawn + "')");
    }
}
