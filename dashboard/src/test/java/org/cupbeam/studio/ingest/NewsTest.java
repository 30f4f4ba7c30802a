package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.Scenes;
import org.junit.jupiter.api.Test;

class NewsTest {
    private final List<Topics> scored = new ArrayList<>();
    private final News news = new News(new News.Reader() {
        @Override
        public void score(Topics lane, Score score) {
            scored.add(lane);
        }

        @Override
        public void health(Topics lane, Health health) {
        }

        @Override
        public void answer(Topics lane, Answer answer) {
        }
    });

    @Test
    void handsOnAScoreUnderItsOwnLanesTopic() {
        say(new Topics("home", "lane-1"));
        assertThat(scored).containsExactly(new Topics("home", "lane-1"));
    }

    @Test
    void refusesAScoreUnderAnotherLanesTopic() {
        say(new Topics("home", "lane-2"));
        say(new Topics("away", "lane-1"));
        assertThat(scored).isEmpty();
    }

    /** A score that says it is of home/lane-1. */
    private void say(Topics under) {
        String topic = "cupbeam/" + under.studio() + "/" + under.lane() + "/score";
        news.handOn(Message.of(topic, ScoreJson.encode(Scenes.alone("Ada", 1, Scenes.HOLED))));
    }
}
