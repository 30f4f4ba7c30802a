package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.practice.PracticeRolls;
import org.cupbeam.event.Health;
import org.cupbeam.event.Rolls;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Topics;
import org.cupbeam.rig.Rig;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.Scenes;
import org.cupbeam.track.RollWatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lane of 10 ft and 1 % uphill, between perfect beams. */
class RollRoutesTest {
    private static final Topics LANE = new Topics("home", "lane-1");
    private static final String PATH = "/api/green/home/lane-1/test";

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
    void aLaneThatIsNotTestedSaysSo() {
        assertThat(pages.get(PATH).get("online").asBoolean()).isFalse();
        pages.lanes.health(LANE, Scenes.online(1, "j1"));
        JsonNode said = pages.get(PATH);
        assertThat(said.get("online").asBoolean()).isTrue();
        assertThat(said.get("on").asBoolean()).isFalse();
        assertThat(said.get("missing_toward").asInt()).isEqualTo(3);
        assertThat(pages.ask("POST", PATH + "/keep", "{}").statusCode()).as("nothing to keep").isEqualTo(409);
        assertThat(pages.ask("GET", PATH + "?without=x", null).statusCode()).isEqualTo(400);
    }

    @Test
    void threeBallsEachWayTellSpeedAndSlopeWhichCanBeKept() {
        rolls(3, 3);
        JsonNode said = pages.get(PATH);

        assertThat(said.get("rolls")).hasSize(6);
        assertThat(said.at("/rolls/0/way").asText()).isEqualTo("toward");
        assertThat(said.at("/rolls/0/ft").asDouble()).as("uphill").isBetween(8.8, 8.95);
        assertThat(said.at("/rolls/5/ft").asDouble()).as("downhill").isBetween(11.3, 11.6);
        assertThat(said.at("/speed/ft").asDouble()).isBetween(9.95, 10.05);
        assertThat(said.at("/speed/uphill_percent").asDouble()).isBetween(0.95, 1.05);
        assertThat(said.get("more").asInt()).isZero();
        assertThat(said.get("more_words").asText()).startsWith("That is known well enough");

        pages.done("POST", PATH + "/keep", "{\"without\": []}");
        assertThat(pages.get(PATH).at("/last/balls").asInt()).isEqualTo(6);
        assertThat(pages.get("/api/green/home/lane-1").at("/test/stimp_ft").asDouble()).isBetween(9.95, 10.05);
        assertThat(pages.get("/api/green/home/lane-1").at("/test/by").asText()).isEqualTo("staff");
    }

    @Test
    void aBallThatIsLeftOutDoesNotCount() {
        rolls(3, 3);
        JsonNode said = pages.get(PATH + "?without=2,6");
        assertThat(said.at("/rolls/1/counts").asBoolean()).isFalse();
        assertThat(said.at("/rolls/1/ft").isNull()).isTrue();
        assertThat(said.get("missing_toward").asInt()).isEqualTo(1);
        assertThat(said.get("missing_back").asInt()).isEqualTo(1);
        assertThat(said.get("speed").isNull()).isTrue();
        assertThat(pages.ask("POST", PATH + "/keep", "{\"without\": [2]}").statusCode()).isEqualTo(409);
    }

    private void rolls(int toward, int back) {
        Rig rig = PracticeRigs.STANDARD.on(10, 1, 0);
        PracticeRolls practice = new PracticeRolls(3, PracticeLane.clean(rig));
        List<Rolls.Roll> rolls = new ArrayList<>();
        RollWatch watch = new RollWatch(rig, ball -> rolls.add(new Rolls.Roll(rolls.size() + 1,
                ball.toward() ? Rolls.Way.TOWARD : Rolls.Way.BACK, ball.crossings().stream().map(each -> new Rolls.Crossing(
                each.beam(), each.onNs() - ball.timeNs(), each.offNs() - ball.timeNs())).toList())));
        for (int i = 0; i < toward + back; i++) {
            watch.advance(practice.roll(i < toward, watch));
        }
        List<Rolls.Beam> beams = rig.beams().stream().map(each -> new Rolls.Beam("b", each.positionMm(),
                watch.chordsMm().get(0))).toList();
        pages.lanes.health(LANE, new Health(Health.State.ONLINE, 1, "b1", new Health.Report("j1", "0.1.0", Scenes.NOW,
                Stamp.Clock.SYNCHRONISED, 0, 0, List.of(), List.of(), new Rolls(600, beams, rolls))));
    }
}
