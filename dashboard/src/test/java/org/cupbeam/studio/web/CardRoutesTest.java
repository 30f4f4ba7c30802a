package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.cupbeam.studio.Pages;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CardRoutesTest {
    private static final String ACROSS = "stimp_ft=10&uphill_percent=0&side_percent=2&past_mm=305&stations_mm=3048,1524";

    @TempDir
    Path folder;
    private Pages pages;

    @BeforeEach
    void open() throws IOException {
        pages = new Pages(folder);
    }

    @AfterEach
    void close() {
        pages.close();
    }

    @Test
    void aCardTellsEachStationsAimAndPaceNearestFirst() {
        JsonNode card = pages.get("/api/card?" + ACROSS);

        assertThat(card.get("rows")).hasSize(2);
        JsonNode far = card.at("/rows/1");
        assertThat(far.get("distance_mm").asDouble()).isEqualTo(3048);
        assertThat(far.get("beside_mm").asDouble()).as("falls to the left: aim to the right").isBetween(-320.0, -250.0);
        assertThat(far.get("share").asDouble()).isBetween(0.75, 0.85);
        assertThat(far.get("to_hole_s").asDouble()).isBetween(2.0, 3.0);
        assertThat(far.at("/way/0/0").asDouble()).isEqualTo(-3048);
        assertThat(far.at("/way/20/0").asDouble()).isCloseTo(0, within(0.05));
        assertThat(far.at("/way/20/1").asDouble()).isCloseTo(0, within(0.05));
        assertThat(far.get("words").asText()).startsWith("From 3.0 m: aim ");
        assertThat(pages.get("/api/card?units=feet&" + ACROSS).at("/rows/1/words").asText()).startsWith("From 10 ft: aim ");
    }

    @Test
    void itsFiguresCanBeTakenAlong() {
        HttpResponse<byte[]> csv = pages.ask("GET", "/api/card/export?as=csv&" + ACROSS, null);

        assertThat(csv.headers().firstValue("Content-Disposition")).hasValue("attachment; filename=\"card.csv\"");
        assertThat(Pages.text(csv).lines().toList()).hasSize(3).first().asString()
                .isEqualTo("station_mm,aim_left_mm,start_mm_s,level_roll_mm,at_hole_mm_s,past_mm,effective_width_mm,"
                        + "to_hole_s,to_rest_s");
        assertThat(Pages.text(csv)).contains("\n3048,-");
    }

    @Test
    void whatMakesNoCardIsRefusedInWords() {
        assertThat(refused(ACROSS.replace("side_percent=2", "side_percent=9"))).contains("does not stop");
        assertThat(refused(ACROSS.replace("stimp_ft=10", "stimp_ft=NaN"))).contains("stimp_ft as a number from 3.0 to 20.0");
        assertThat(refused(ACROSS.replace("stimp_ft=10&", ""))).contains("stimp_ft");
        assertThat(refused(ACROSS.replace("1524", "x"))).contains("stations_mm");
        assertThat(refused(ACROSS + ",1".repeat(20))).contains("one to 12 stations");
        assertThat(refused(ACROSS.replace("past_mm=305", "past_mm=-1"))).contains("past_mm");
    }

    private String refused(String query) {
        HttpResponse<byte[]> answer = pages.ask("GET", "/api/card?" + query, null);
        assertThat(answer.statusCode()).as(query).isEqualTo(400);
        return Pages.json(answer).get("error").asText();
    }
}
