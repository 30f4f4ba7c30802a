package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.ScriptedLane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An evening of four putts within six minutes, 19:00 in Berlin, on a Wednesday. */
class UsageRoutesTest {
    private static final String HOURS = "{\"zone\": \"Europe/Berlin\", \"hours\": \"wed 17:00-21:00\"}";

    @TempDir
    Path folder;
    private Pages pages;

    @BeforeEach
    void open() throws IOException {
        pages = new Pages(folder);
        ScriptedLane lane = new ScriptedLane("one", "j1");
        pages.keep(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1),
                lane.passes(120).misses("r1", null, "Ada", 2, 300), lane.passes(120).holes("r1", null, "Ada", 2),
                lane.passes(120).misses("r1", null, "Ada", 3, 1_200), lane.ends("r1", null, "Ada", 2, 4, 2, 750));
        assertThat(pages.ask("PUT", "/api/usage/hours", HOURS).statusCode()).isEqualTo(200);
    }

    @AfterEach
    void close() {
        pages.close();
    }

    @Test
    void aMonthTellsPlayAgainstOpenTimeOfAllAndByLaneDayAndHour() {
        JsonNode month = pages.get("/api/usage?month=2026-11");

        assertThat(month.at("/all/putts").asInt()).isEqualTo(4);
        assertThat(month.at("/all/holed").asInt()).isEqualTo(2);
        assertThat(month.at("/all/play_ms").asLong()).isEqualTo(360_000);
        assertThat(month.at("/all/open_ms").asLong()).as("four Wednesdays of four hours").isEqualTo(4 * 4 * 3_600_000L);
        assertThat(month.at("/lanes/0/lane").asText()).isEqualTo("one");
        assertThat(month.at("/days/24/day").asText()).isEqualTo("2026-11-25");
        assertThat(month.at("/days/24/figures/play_ms").asLong()).isEqualTo(360_000);
        JsonNode wednesdayAtSeven = month.get("heat").get(2 * 24 + 19);
        assertThat(wednesdayAtSeven.get("day").asInt()).isEqualTo(3);
        assertThat(wednesdayAtSeven.at("/figures/share").asDouble()).isEqualTo(0.025);
        assertThat(month.at("/busiest/0/hour").asInt()).isEqualTo(19);
        assertThat(month.at("/heat/0/figures/share").isNull()).as("never open").isTrue();
        assertThat(month.at("/visitors/players").asInt()).isEqualTo(1);
        assertThat(month.get("newcomers").asInt()).isEqualTo(1);
        assertThat(month.get("balls_fetched").asInt()).isEqualTo(2);
    }

    @Test
    void withoutAMonthItIsThatOfNow() {
        assertThat(pages.get("/api/usage").get("month").asText()).isEqualTo("2026-11");
    }

    @Test
    void aMonthThatIsNoneIsRefusedInWords() {
        for (String month : new String[] {"2026-13", "November", "-1", "999999999-01", "%3Cb%3E"}) {
            HttpResponse<byte[]> answer = pages.ask("GET", "/api/usage?month=" + month, null);
            assertThat(answer.statusCode()).as(month).isEqualTo(400);
            assertThat(Pages.json(answer).get("error").asText()).isEqualTo("Give a month as 2026-11.");
        }
    }

    @Test
    void hoursThatMakeNoSenseAreRefusedWithWhatWouldDoAndChangeNothing() {
        HttpResponse<byte[]> answer = pages.ask("PUT", "/api/usage/hours",
                "{\"zone\": \"Europe/Berlin\", \"hours\": \"tomorrow\"}");
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(Pages.json(answer).get("error").asText()).contains("tomorrow").contains("write it as");
        assertThat(pages.ask("PUT", "/api/usage/hours", "{\"zone\": \"Mars\", \"hours\": \"\"}").statusCode())
                .isEqualTo(400);
        assertThat(pages.get("/api/usage").get("hours").asText()).isEqualTo("wed 17:00-21:00");
    }

    @Test
    void aMonthIsExportedAsOneJsonFileOrATableAsCsv() throws IOException {
        HttpResponse<byte[]> json = pages.ask("GET", "/api/usage/export?month=2026-11&as=json", null);
        assertThat(json.headers().firstValue("Content-Disposition")).hasValue("attachment; filename=\"usage-2026-11.json\"");
        assertThat(Pages.json(json).at("/lanes/0/putts").asInt()).isEqualTo(4);
        assertThat(Pages.json(json).get("hours_of_the_week")).hasSize(168);

        HttpResponse<byte[]> csv = pages.ask("GET", "/api/usage/export?month=2026-11&as=csv&sheet=lanes", null);
        assertThat(csv.headers().firstValue("Content-Disposition"))
                .hasValue("attachment; filename=\"usage-2026-11-lanes.csv\"");
        assertThat(Pages.text(csv)).isEqualTo(
                "studio,lane,open_h,play_h,play_while_closed_h,putts,holed\r\nhome,one,16,0.1,0,4,2\r\n");
        assertThat(pages.ask("GET", "/api/usage/export?month=2026-11&as=csv", null).statusCode())
                .as("which table is not said").isEqualTo(400);
        assertThat(pages.ask("GET", "/api/usage/export?month=2026-11&as=exe", null).statusCode()).isEqualTo(400);
    }
}
