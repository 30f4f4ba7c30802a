package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.Scenes;
import org.cupbeam.studio.ScriptedLane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lane that reads 9.4 ft, give or take 0.2, on a Wednesday evening from 19:00 in Berlin; it is ten now. */
class GreenRoutesTest {
    private static final Topics LANE = new Topics("home", "lane-1");
    private static final String PATH = "/api/green/home/lane-1";

    @TempDir
    Path folder;
    private Pages pages;

    @BeforeEach
    void open() throws IOException {
        pages = new Pages(folder);
        ScriptedLane lane = new ScriptedLane("lane-1", "j1");
        pages.keep(lane.puttsOutsideAnyRun(), lane.passes(3_600).puttsOutsideAnyRun(), lane.passes(3_600).puttsOutsideAnyRun());
    }

    @AfterEach
    void close() {
        pages.close();
    }

    @Test
    void aDayTellsItsReadingsTheLastWithItsUncertaintyAndItsDrift() {
        JsonNode day = pages.get(PATH);

        assertThat(day.get("day").asText()).isEqualTo("2026-11-25");
        assertThat(day.get("zone").asText()).isEqualTo("Europe/Berlin");
        assertThat(day.get("said").asText()).isEqualTo("The green runs 9.4 ft (9.0 to 9.8), steady over the day.");
        assertThat(day.get("readings")).hasSize(3);
        assertThat(day.at("/readings/2/low").asDouble()).isEqualTo(9.01);
        assertThat(day.at("/drift/ft").asDouble()).isZero();
        assertThat(day.get("days")).hasSize(1);
        assertThat(day.at("/days/0/day").asText()).isEqualTo("2026-11-25");
        assertThat(day.get("now").isNull()).as("not heard of late").isTrue();
    }

    @Test
    void anotherDayHasNoneOfIt() {
        JsonNode before = pages.get(PATH + "?day=2026-11-24");
        assertThat(before.get("readings")).isEmpty();
        assertThat(before.get("said").isNull()).isTrue();
        for (String day : new String[] {"2026-11-26", "2026-13-01", "yesterday", "0001-01-01"}) {
            assertThat(pages.ask("GET", PATH + "?day=" + day, null).statusCode()).as(day).isEqualTo(400);
        }
        assertThat(pages.ask("GET", "/api/green/home/No%20lane", null).statusCode()).isEqualTo(404);
    }

    @Test
    void aGreenThatIsSurelyOutOfItsRangeIsTold() {
        pages.lanes.score(LANE, Scenes.free(Scenes.HOLED));
        assertThat(pages.get("/api/green").at("/0/now/ft").asDouble()).isEqualTo(9.4);
        assertThat(pages.get("/api/green").at("/0/alert").isNull()).as("no range is set").isTrue();

        pages.done("PUT", PATH + "/range", "{\"low_ft\": 9.3, \"high_ft\": 11}");
        assertThat(pages.get("/api/green").at("/0/alert").isNull()).as("inside").isTrue();
        pages.done("PUT", PATH + "/range", "{\"low_ft\": 9.5, \"high_ft\": 11}");
        assertThat(pages.get("/api/green").at("/0/alert").isNull()).as("outside, but not surely").isTrue();
        pages.done("PUT", PATH + "/range", "{\"low_ft\": 10, \"high_ft\": 11}");
        String alert = "The green runs 9.4 ft, slower than the 10.0 to 11.0 ft wanted.";
        assertThat(pages.get("/api/green").at("/0/alert").asText()).isEqualTo(alert);
        assertThat(pages.get(PATH).get("alert").asText()).isEqualTo(alert);
        assertThat(pages.get(PATH).at("/days/0/alert").asText()).isEqualTo(alert);
        assertThat(pages.get("/api/health").at("/0/green").asText()).isEqualTo(alert);

        pages.done("PUT", PATH + "/range", "{\"low_ft\": null, \"high_ft\": null}");
        assertThat(pages.get("/api/health").at("/0/green").isNull()).isTrue();
    }

    @Test
    void aRangeThatNoGreenIsInIsRefusedAndChangesNothing() {
        pages.done("PUT", PATH + "/range", "{\"low_ft\": 9, \"high_ft\": 11}");
        for (String range : new String[] {"{\"low_ft\": 11, \"high_ft\": 9}", "{\"low_ft\": 1, \"high_ft\": 9}",
                "{\"low_ft\": 9}", "{\"low_ft\": 9, \"high_ft\": 99}"}) {
            assertThat(pages.ask("PUT", PATH + "/range", range).statusCode()).as(range).isEqualTo(400);
        }
        assertThat(pages.get(PATH).at("/range/high_ft").asDouble()).isEqualTo(11);
    }

    @Test
    void itsNumbersCanBeTakenAlong() {
        HttpResponse<byte[]> csv = pages.ask("GET", PATH + "/export?as=csv&sheet=readings", null);
        assertThat(csv.headers().firstValue("Content-Disposition"))
                .hasValue("attachment; filename=\"green-lane-1-2026-11-25-readings.csv\"");
        assertThat(Pages.text(csv)).startsWith("time,stimp_ft,low_ft,high_ft,sd_ft\r\n2026-11-25T18:00:00Z,9.4,9.01,9.79,0.2\r\n");
        JsonNode json = Pages.json(pages.ask("GET", PATH + "/export?as=json", null));
        assertThat(json.at("/days/0/drift_ft").asDouble()).isZero();
        assertThat(json.get("readings")).hasSize(3);
    }
}
