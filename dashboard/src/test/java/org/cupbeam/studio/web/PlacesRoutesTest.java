package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.practice.PracticeRolls;
import org.cupbeam.event.Health;
import org.cupbeam.event.Rolls;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Topics;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.RigText;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.Scenes;
import org.cupbeam.track.RollWatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A standard lane whose third beam stands 5 mm further than its rig file says. */
class PlacesRoutesTest {
    private static final Topics LANE = new Topics("home", "lane-1");
    private static final String PATH = "/api/health/home/lane-1/places";
    private static final String RIG = "{\"text\":\"[green]\"}";

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
    void withoutATestThereIsNothingToTell() {
        assertThat(pages.get(PATH).get("online").asBoolean()).isFalse();
        pages.lanes.health(LANE, Scenes.online(1, "j1"));
        assertThat(pages.get(PATH).get("on").asBoolean()).isFalse();
        assertThat(pages.get(PATH).get("advice").isNull()).as("before a score there is nothing to advise on").isTrue();
        assertThat(pages.ask("POST", PATH + "/file", RIG).statusCode()).isEqualTo(409);
    }

    @Test
    void threeBallsEachWayFindTheBeamThatStandsElsewhere() {
        rolls(3, 3, "past-1");
        JsonNode said = pages.get(PATH);

        assertThat(said.at("/beams/2/rig_mm").asDouble()).isEqualTo(914.4);
        assertThat(said.at("/beams/2/mm").asDouble()).isCloseTo(919.4, within(2.0));
        assertThat(said.at("/beams/2/within_mm").asDouble()).isBetween(1.0, 5.0);
        assertThat(said.at("/beams/1/mm").asDouble()).isCloseTo(-240, within(1.0));
        assertThat(said.at("/stimp_ft/value").asDouble()).isCloseTo(10, within(0.1));
        assertThat(said.at("/uphill_percent/value").asDouble()).isCloseTo(1, within(0.1));
        assertThat(said.get("text").asText()).contains("name = \"past-1\"", "the file had 914.4", "by 6 rolled balls");

        JsonNode other = pages.get(PATH + "?beam=3&at_mm=980&within_mm=0.5");
        assertThat(other.at("/beams/3/mm").asDouble()).isEqualTo(980);
        assertThat(other.at("/beams/3/within_mm").asDouble()).isEqualTo(0.5);
    }

    @Test
    void theWholeRigFileComesBackWithTheNewNumbersAndAllElseAsItWas() throws Exception {
        rolls(3, 3, "past-1");
        Rig file = new Rig(9, 0, -0.25, 800, PracticeRigs.STANDARD.level().channels(), PracticeRigs.STANDARD.level().beams(), OptionalInt.of(26));
        Rig back = RigFile.parse("it", whole(RigText.of(file)).get("text").asText());

        assertThat(back.channels()).isEqualTo(file.channels());
        assertThat(back.lampGpio()).hasValue(26);
        assertThat(new double[] {back.sidePercent(), back.limitMm()}).containsExactly(-0.25, 800);
        assertThat(back.beams().get(2).positionMm()).isCloseTo(919.4, within(2.0));
        assertThat(back.stimpFt()).isCloseTo(10, within(0.15));
        assertThat(whole(RigText.of(PracticeRigs.GATE.level())).get("error").asText()).contains("another lane's rig file");
        assertThat(whole("[green]\nstimp_ft = 10").get("error").asText()).contains("rig.toml:1: green.uphill_percent: missing");
        assertThat(whole("x".repeat(40_000)).get("error").asText()).contains("no more than 32 thousand");
        assertThat(whole(" ").get("error").asText()).contains("Give the lane's rig file");
    }

    private JsonNode whole(String toml) throws IOException {
        ObjectMapper json = new ObjectMapper();
        return json.readTree(pages.ask("POST", PATH + "/file", json.writeValueAsString(Map.of("text", toml))).body());
    }

    @Test
    void howTheBeamsStandToHoleAndLimitIsSaid() {
        rolls(3, 3, "past-1");
        pages.lanes.score(LANE, Scenes.free(Scenes.HOLED));
        assertThat(pages.get(PATH).get("limit_mm").asDouble()).isEqualTo(914.4);
        assertThat(pages.get(PATH).get("advice")).extracting(JsonNode::asText).containsExactly("the hole has no sensor: no putt can be seen to drop");
        pages.lanes.health(LANE, Scenes.online(1, "j1"));
        assertThat(pages.get(PATH).get("advice")).isEmpty();
    }

    @Test
    void tooFewBallsAreShownAndGiveNoFile() {
        rolls(2, 1, "past-1");
        JsonNode said = pages.get(PATH);
        assertThat(said.at("/beams/2/mm").isNull()).isFalse();
        assertThat(said.get("text").isNull()).isTrue();
        assertThat(said.get("toward").asInt()).isEqualTo(2);
    }

    @Test
    void aHostileNameDoesNoHarmToTheFile() {
        rolls(3, 3, "\"]\n[cup]");
        assertThat(pages.get(PATH).get("text").asText()).contains("name = \"????cup?\"").doesNotContain("\n[cup]");
    }

    @ParameterizedTest
    @ValueSource(strings = {"?beam=4", "?beam=-1", "?at_mm=x", "?at_mm=1e9", "?within_mm=0", "?within_mm=NaN"})
    void nonsenseIsRefused(String query) {
        rolls(3, 3, "past-1");
        assertThat(pages.ask("GET", PATH + query, null).statusCode()).isEqualTo(400);
    }

    private void rolls(int toward, int back, String third) {
        Rig file = PracticeRigs.STANDARD.on(10, 1, 0);
        List<Beam> moved = file.beams().stream().map(each -> file.beams().indexOf(each) == 2
                ? new Beam(each.channel(), each.positionMm() + 5, each.heightMm()) : each).toList();
        Rig truth = new Rig(file.stimpFt(), file.uphillPercent(), 0, file.limitMm(), file.channels(), moved, file.lampGpio());
        PracticeRolls practice = new PracticeRolls(3, PracticeLane.clean(truth));
        List<Rolls.Roll> rolls = new ArrayList<>();
        RollWatch watch = new RollWatch(file, ball -> rolls.add(new Rolls.Roll(rolls.size() + 1,
                ball.toward() ? Rolls.Way.TOWARD : Rolls.Way.BACK, ball.crossings().stream().map(each -> new Rolls.Crossing(
                each.beam(), each.onNs() - ball.timeNs(), each.offNs() - ball.timeNs())).toList())));
        for (int i = 0; i < toward + back; i++) {
            watch.advance(practice.roll(i < toward, watch));
        }
        List<Rolls.Beam> beams = file.beams().stream().map(each -> new Rolls.Beam(file.beams().indexOf(each) == 2 ? third
                : file.channels().get(each.channel()).name(), each.positionMm(), watch.chordsMm().get(0))).toList();
        pages.lanes.health(LANE, new Health(Health.State.ONLINE, 1, "b1", new Health.Report("j1", "0.1.0", Scenes.NOW,
                Stamp.Clock.SYNCHRONISED, 0, 0, List.of(), List.of(), new Rolls(600, beams, rolls))));
    }
}
