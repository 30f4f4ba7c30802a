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
    private final List<String> said = new ArrayList<>();
    private long nowNs;
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
    }, () -> nowNs, said::add);

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

    @Test
    void whatIsLetGoIsSaidOnceAMinuteHoweverMuchItIs() throws Exception {
        for (int minute = 0; minute < 2; minute++) {
            for (int i = 0; i < 3_000; i++) {
                news.offer(Message.of("cupbeam/home/lane-1/answer", new byte[] {'{'}), Topics.Kind.ANSWER);
            }
            assertThat(news.step(0)).isTrue();
            news.offer(Message.of("cupbeam/home/lane-1/answer", new byte[] {'{'}), Topics.Kind.ANSWER);
            news.offer(Message.of("cupbeam/home/lane-1/answer", new byte[] {'{'}), Topics.Kind.ANSWER);
            assertThat(news.step(0)).isTrue();
            nowNs += 60_000_000_000L;
        }
        assertThat(said).filteredOn(each -> each.contains("let go")).hasSize(2).allMatch(each -> each.matches("\\d+ scores, health and answers let go, .*"));
    }

    /** A score that says it is of home/lane-1. */
    private void say(Topics under) {
        String topic = "cupbeam/" + under.studio() + "/" + under.lane() + "/score";
        news.handOn(Message.of(topic, ScoreJson.encode(Scenes.alone("Ada", 1, Scenes.HOLED))));
    }
}
