package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.ScriptedLane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InsightRoutesTest {
    @TempDir
    Path folder;
    private Pages pages;

    @BeforeEach
    void open() throws Exception {
        pages = new Pages(folder);
        ScriptedLane lane = new ScriptedLane("one", "j1");
        pages.keep(lane.starts("r1", null, "Ada", 1), lane.passes(10).holes("r1", null, "Ada", 1),
                lane.passes(10).misses("r1", null, "Ada", 2, 417), lane.passes(10).misses("r1", null, "Ada", 2, 1_300),
                lane.ends("r1", null, "Ada", 1, 3, 1, 858.5), lane.starts("r2", null, "Bo", 1),
                lane.passes(10).holes("r2", null, "Bo", 1));
    }

    @AfterEach
    void close() {
        pages.close();
    }

    @Test
    void theDrillPlayedLastIsForeseenAndItsRunOfTheDaySetAgainstThePlayersOwn() {
        JsonNode said = pages.get("/api/insight/1");
        assertThat(said.at("/drill").asText()).isEqualTo("played-1");
        assertThat(said.at("/drills/0/name").asText()).isEqualTo("Ladder");
        assertThat(said.at("/run/at_least/0").asDouble()).isBetween(0.999, 1.001);
        assertThat(said.at("/run/runs")).hasSize(1);
        assertThat(said.at("/run/runs/0/standing").asDouble()).isBetween(0.0, 1.0);
        assertThat(said.at("/run/runs/0/said").asText()).startsWith("1 station in 3 putts: ");
        assertThat(pages.get("/api/insight/1?balls=3").at("/run/runs")).as("with other balls it is another drill").isEmpty();
    }

    @Test
    void missesAreWhereTheyStoppedAndTheLimitIsTheDrills() {
        JsonNode finishes = pages.get("/api/insight/1").at("/finishes");
        assertThat(finishes.at("/misses").findValuesAsText("finish_mm")).containsExactly("417.0", "1300.0");
        assertThat(finishes.at("/limit_mm").asDouble()).isEqualTo(914.4);
    }

    @Test
    void twoPlayersOddsAddUpAndAHeadStartIsSaid() {
        JsonNode duel = pages.get("/api/insight/1?against=2").at("/run/duel");
        assertThat(duel.at("/first").asDouble() + duel.at("/second").asDouble() + duel.at("/level").asDouble())
                .isBetween(0.999, 1.001);
        assertThat(duel.at("/name").asText()).isEqualTo("Bo");
        assertThat(duel.at("/head_start_said").asText()).isNotBlank();
    }

    @Test
    void moreBallsClearMoreStations() {
        assertThat(pages.get("/api/insight/1?drill=ladder&balls=8").at("/run/at_least/4").asDouble())
                .isGreaterThan(pages.get("/api/insight/1?drill=ladder&balls=2").at("/run/at_least/4").asDouble());
    }

    @Test
    void tooFewPlayersAreNoCompanyToBeComparedWith() {
        JsonNode curve = pages.get("/api/insight/1").at("/curve");
        assertThat(curve.at("/company").isNull()).isTrue();
        assertThat(curve.at("/points/9/half").isNull()).isTrue();
        assertThat(curve.at("/benches")).hasSize(2);
        assertThat(curve.at("/sources/0").asText()).contains("Broadie");
        assertThat(pages.get("/api/insight/1?bench=ninety").at("/curve/benches")).hasSize(1);
    }

    @Test
    void lengthsAreToldAsAskedFor() {
        assertThat(pages.get("/api/insight/1?units=feet").at("/curve/said/0").asText()).startsWith("From 6 ft you hole");
        assertThat(pages.get("/api/insight/1?units=metric").at("/curve/said/0").asText()).startsWith("From 1.8 m you hole");
        assertThat(pages.get("/api/insight/1/next?distance_mm=1829&putts=20&units=feet").at("/said").asText())
                .startsWith("Of your next 20 putts from 6 ft");
    }

    @Test
    void whatMakesNoSenseIsRefusedInWords() {
        for (String asked : new String[] {"?balls=0", "?balls=99", "?balls=x", "?bench=moon", "?against=-1", "?drill=no",
            "/next?distance_mm=1", "/next?putts=9999"}) {
            assertThat(pages.ask("GET", "/api/insight/1" + asked, null).statusCode()).as(asked).isIn(400, 404);
        }
        assertThat(pages.ask("GET", "/api/insight/99", null).statusCode()).isEqualTo(404);
        assertThat(pages.ask("GET", "/api/insight/1?against=99", null).statusCode()).isEqualTo(404);
    }
}
