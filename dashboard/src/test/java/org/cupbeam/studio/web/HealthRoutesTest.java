package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.Scenes;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HealthRoutesTest {
    private static final Topics LANE = new Topics("home", "lane-1");

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
    void thereIsNothingToTellBeforeALaneIsHeard() {
        assertThat(pages.get("/api/health")).isEmpty();
    }

    @Test
    void eachLaneIsToldOfAsItSaidItselfAndHowLongAgo() {
        pages.lanes.health(LANE, Scenes.online(3, "j1", "beam past is blocked all the time"));

        JsonNode lane = pages.get("/api/health").get(0);
        assertThat(lane.get("studio").asText()).isEqualTo("home");
        assertThat(lane.get("lane").asText()).isEqualTo("lane-1");
        assertThat(lane.get("heard_ago_s").asDouble()).isBetween(0.0, 60.0);
        assertThat(lane.at("/health/state").asText()).isEqualTo("online");
        assertThat(lane.at("/health/sensors/0/name").asText()).isEqualTo("cup");
        assertThat(lane.at("/health/faults/0").asText()).isEqualTo("beam past is blocked all the time");
    }

    @Test
    void aLaneThatOnlyKeepsScoreIsThereWithNoHealth() {
        pages.lanes.score(LANE, Scenes.free(Scenes.HOLED));

        JsonNode lane = pages.get("/api/health").get(0);
        assertThat(lane.get("health").isNull()).isTrue();
        assertThat(lane.get("heard_ago_s").isNull()).isTrue();
        assertThat(lane.at("/beams/0/name").asText()).isEqualTo("near-1");
        assertThat(lane.at("/beams/0/position_mm").asDouble()).isEqualTo(-310);
    }

    @Test
    void thatTheStoreTakesNothingIsToldOfEachLane() {
        pages.lanes.health(LANE, Scenes.online(3, "j1"));
        assertThat(pages.get("/api/health").at("/0/store").isNull()).isTrue();

        pages.storeSays("store studio.db: its disk is full; make room");
        assertThat(pages.get("/api/health").at("/0/store").asText()).isEqualTo("store studio.db: its disk is full; make room");
    }

    @Test
    void theLateWillOfAnEarlierConnectionSaysNothing() {
        pages.lanes.health(LANE, Scenes.online(3, "j1"));
        pages.lanes.health(LANE, Scenes.lost(2));
        assertThat(pages.get("/api/health").at("/0/health/state").asText()).isEqualTo("online");

        pages.lanes.health(LANE, Scenes.lost(3));
        assertThat(pages.get("/api/health").at("/0/health/state").asText()).isEqualTo("lost");
    }
}
