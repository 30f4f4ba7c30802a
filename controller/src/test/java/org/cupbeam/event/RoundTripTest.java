package org.cupbeam.event;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class RoundTripTest {
    @Test
    void everyEventComesBackAsItWent() throws BadMessage {
        for (Event event : Samples.events()) {
            assertThat(EventJson.decode(EventJson.encode(event))).isEqualTo(event);
        }
    }

    @Test
    void everyScoreComesBackAsItWent() throws BadMessage {
        for (Score score : Samples.scores()) {
            assertThat(ScoreJson.decode(ScoreJson.encode(score))).isEqualTo(score);
        }
    }

    @Test
    void everyHealthComesBackAsItWent() throws BadMessage {
        for (Health health : Samples.healths()) {
            assertThat(HealthJson.decode(HealthJson.encode(health))).isEqualTo(health);
        }
    }

    @Test
    void everyCommandAndAnswerComesBackAsItWent() throws BadMessage {
        for (Command command : Samples.commands()) {
            assertThat(CommandJson.decode(CommandJson.encode(command))).isEqualTo(command);
        }
        for (Answer answer : Samples.answers()) {
            assertThat(CommandJson.decodeAnswer(CommandJson.encode(answer))).isEqualTo(answer);
        }
    }

    @Test
    void storedComesBackAsItWent() throws BadMessage {
        Stored stored = new Stored("7f3c9a", 42);
        assertThat(StoredJson.decode(StoredJson.encode(stored))).isEqualTo(stored);
    }

    @Test
    void theLargestScoreStaysWithinThePayloadLimit() throws BadMessage {
        Score largest = Samples.score(Score.MAX_PLAYERS, Score.MAX_PUTTS);
        assertThat(ScoreJson.decode(ScoreJson.encode(largest))).isEqualTo(largest);
    }

    @Test
    void theLargestTestOfAGreenStaysWithinThePayloadLimit() throws BadMessage {
        for (int beams : new int[] {2, 20, 48}) {
            Health health = new Health(Health.State.ONLINE, 1, Samples.STAMP.boot(), new Health.Report("7f3c9a", "0.1.0",
                    Samples.TIME, Stamp.Clock.SYNCHRONISED, 0, 0, List.of(), List.of(),
                    Samples.rolls(beams, Math.min(Rolls.MAX_ROLLS, 480 / beams))));
            assertThat(HealthJson.decode(HealthJson.encode(health))).isEqualTo(health);
        }
    }

    @Test
    void lengthsAreRoundedToATenth() throws BadMessage {
        Putt fine = new Putt(Putt.Outcome.MISSED, -0.04, 9.14999, 1.25, 2.35, false, 1.04, 1.06, false,
                Putt.How.SENSED);
        Event event = new Event(Samples.SOURCE, 1, Samples.TIME,
                new Data.Attempt(Samples.STAMP, fine, null, Tags.NONE, Samples.GREEN));
        Data.Attempt back = (Data.Attempt) EventJson.decode(EventJson.encode(event)).data();
        assertThat(back.putt()).isEqualTo(new Putt(Putt.Outcome.MISSED, 0, 9.1, 1.3, 2.4, false, 1.0, 1.1, false,
                Putt.How.SENSED));
    }
}
