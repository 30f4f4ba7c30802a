package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.cupbeam.event.Topics;
import org.cupbeam.studio.Scenes;
import org.junit.jupiter.api.Test;

class LiveLaneTest {
    private final LiveLane lane = new LiveLane(new Topics("home", "lane-1"), new Stream("x"));

    @Test
    void isUnheardUntilItSaysSomething() {
        assertThat(lane.heard()).isFalse();
        assertThat(lane.listed().state()).isEqualTo("unheard");
    }

    @Test
    void isLostWhenTheBrokerSaysSoOfTheConnectionThatStands() {
        lane.health(Scenes.online(4, "j1"));
        assertThat(lane.health(Scenes.lost(4))).isTrue();
        assertThat(lane.listed().state()).isEqualTo("lost");
    }

    @Test
    void passesOverTheWillOfAnEarlierConnection() {
        lane.health(Scenes.online(5, "j1"));
        assertThat(lane.health(Scenes.lost(4))).isFalse();
        assertThat(lane.listed().state()).isEqualTo("online");
    }

    @Test
    void isBackWhenItSaysSo() {
        lane.health(Scenes.lost(4));
        lane.health(Scenes.online(1, "another-journal")); // its connections are counted from the beginning
        assertThat(lane.listed().state()).isEqualTo("online");
    }

    @Test
    void tellsTheListOnlyOfWhatTheListShows() {
        assertThat(lane.score(Scenes.alone("Ada", 1, Scenes.HOLED))).isTrue();
        assertThat(lane.score(Scenes.alone("Ada", 2, Scenes.MISSED))).isFalse();
        assertThat(lane.score(Scenes.free(Scenes.MISSED))).isTrue();
    }
}
