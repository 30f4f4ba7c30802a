package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import org.cupbeam.event.Answer;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Command;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Stored;
import org.cupbeam.event.StoredJson;
import org.cupbeam.journal.Journal;
import org.cupbeam.journal.JournalException;
import org.junit.jupiter.api.Test;

/** What a link sends and hears, stepped by hand. */
class LinkTest extends SteppedLink {
    @Test
    void nothingIsConnectedBeforeTheLaneHasSaidHowItIs() {
        step();
        assertThat(wire.wills).isEmpty();
        assertThat(link.trouble()).isNotNull();
        link.health(Lane.report());
        step();
        assertThat(wire.wills).hasSize(1);
    }

    @Test
    void theLastWillSaysLostWithTheNumberOfItsConnectionAndOnlineHasTheSame() throws BadMessage {
        online();
        Wire.Message will = wire.wills.get(0);
        assertThat(will.topic()).isEqualTo("cupbeam/north/bay-3/health");
        assertThat(will.retained()).isTrue();
        assertThat(HealthJson.decode(will.payload())).isEqualTo(new Health(Health.State.LOST, 1, "boot", null));
        assertThat(HealthJson.decode(wire.published.get(0).payload()))
                .isEqualTo(new Health(Health.State.ONLINE, 1, "boot", Lane.report()));
        assertThat(wire.published.get(0).retained()).isTrue();
        assertThat(link.trouble()).isNull();
    }

    @Test
    void itSubscribesAfterEveryConnect() {
        online();
        wire.fail("gone");
        step();
        nowMs += 1000;
        step();
        wire.accept();
        step();
        assertThat(wire.subscriptions).hasSize(2).allMatch(each -> each.equals(List.of(
                "cupbeam/north/bay-3/command", "cupbeam/north/bay-3/stored", "cupbeam/north/bay-3/health")));
        assertThat(wire.wills).hasSize(2);
        assertThat(link.connection()).isEqualTo(2);
    }

    @Test
    void noMoreThanEightEventsAreUnderWayAndTheNextGoOutAsTheBrokerTakesThem() {
        outbox.last = 20;
        online();
        assertThat(wire.sent("/event")).isEqualTo(texts(1, 8));
        step();
        assertThat(wire.sent("/event")).isEmpty();
        wire.acknowledgeAll();
        step();
        assertThat(wire.sent("/event")).isEqualTo(texts(9, 16));
        wire.acknowledgeAll();
        step();
        assertThat(wire.sent("/event")).isEqualTo(texts(17, 20));
    }

    @Test
    void eventsAreNotRetainedAndTheScoreIs() {
        outbox.last = 1;
        online();
        link.score(Lane.score(1));
        step();
        assertThat(wire.published).extracting(Wire.Message::topic, Wire.Message::retained).contains(
                tuple("cupbeam/north/bay-3/event", false),
                tuple("cupbeam/north/bay-3/score", true));
    }

    @Test
    void onlyTheLatestScoreGoesOutHoweverManyThereWere() throws BadMessage {
        for (int i = 1; i <= 5; i++) {
            link.score(Lane.score(i));
        }
        online();
        List<String> first = wire.sent("/score");
        assertThat(first).hasSize(1);
        assertThat(ScoreJson.decode(first.get(0).getBytes())).isEqualTo(Lane.score(5));
        link.score(Lane.score(6));
        link.score(Lane.score(7));
        step();
        assertThat(wire.sent("/score")).as("one at a time").isEmpty();
        wire.acknowledgeAll();
        step();
        List<String> next = wire.sent("/score");
        assertThat(next).hasSize(1);
        assertThat(ScoreJson.decode(next.get(0).getBytes())).isEqualTo(Lane.score(7));
    }

    @Test
    void aBrokerThatForgotEverythingIsToldScoreAndHealthAgain() {
        link.score(Lane.score(1));
        online();
        wire.acknowledgeAll();
        step();
        wire.published.clear();
        wire.fail("restarted");
        step();
        nowMs += 1000;
        step();
        wire.accept();
        step();
        assertThat(wire.published).extracting(Wire.Message::topic)
                .contains("cupbeam/north/bay-3/score", "cupbeam/north/bay-3/health");
    }

    @Test
    void afterReconnectingEventsGoOutAgainFromStored() {
        outbox.last = 6;
        online();
        wire.arrive("cupbeam/north/bay-3/stored", StoredJson.encode(new Stored("7f3c9a", 4)));
        step();
        wire.fail("gone");
        step();
        wire.published.clear();
        nowMs += 1000;
        step();
        wire.accept();
        step();
        assertThat(wire.sent("/event")).isEqualTo(texts(5, 6));
    }

    @Test
    void whatTheHostSaysOfAnotherJournalOrOfWhatNeverWasIsNotBelieved() {
        outbox.last = 6;
        online();
        wire.arrive("cupbeam/north/bay-3/stored", StoredJson.encode(new Stored("other", 4)));
        wire.arrive("cupbeam/north/bay-3/stored", StoredJson.encode(new Stored("7f3c9a", 7)));
        wire.arrive("cupbeam/north/bay-3/stored", "{\"journal\":7}".getBytes());
        step();
        assertThat(outbox.stored).isZero();
        assertThat(link.refused()).isEqualTo(2);
        assertThat(link.online()).isTrue();
    }

    @Test
    void commandsReachTheLaneAndItsAnswersTheHost() throws BadMessage {
        online();
        Command pass = new Command("c-1", "Jo", OptionalLong.empty(), new Command.Pass());
        wire.arrive("cupbeam/north/bay-3/command", CommandJson.encode(pass));
        step();
        assertThat(commands).containsExactly(pass);
        link.answer(new Answer("c-1", true, null, 3));
        step();
        assertThat(CommandJson.decodeAnswer(wire.sent("/answer").get(0).getBytes()))
                .isEqualTo(new Answer("c-1", true, null, 3));
    }

    @Test
    void aCommandThatMakesNoSenseIsRefusedWithItsReasonAndNeverReachesTheLane() throws BadMessage {
        outbox.last = 5;
        online();
        wire.arrive("cupbeam/north/bay-3/command", "{\"id\":\"c-1\",\"by\":\"Jo\",\"command\":\"dance\"}".getBytes());
        wire.arrive("cupbeam/north/bay-3/command", "no JSON at all".getBytes());
        step();
        assertThat(commands).isEmpty();
        List<String> answers = wire.sent("/answer");
        assertThat(answers).hasSize(1);
        assertThat(CommandJson.decodeAnswer(answers.get(0).getBytes())).isEqualTo(new Answer("c-1", false,
                "command: is \"dance\"; give one of start, take-back, miss, void, pass, end, test-rolls", 5));
        assertThat(link.refused()).isEqualTo(2);
    }

    @Test
    void aCommandThatTheBusyLaneCannotTakeIsRefused() throws BadMessage {
        online();
        laneIsBusy = true;
        wire.arrive("cupbeam/north/bay-3/command", CommandJson.encode(
                new Command("c-1", "Jo", OptionalLong.empty(), new Command.Pass())));
        step();
        assertThat(CommandJson.decodeAnswer(wire.sent("/answer").get(0).getBytes()).accepted()).isFalse();
    }

    @Test
    void aCommandThatTheBrokerKeptFromEarlierIsNotObeyed() {
        online();
        wire.news.add(new Wire.News.Received(new Wire.Message("cupbeam/north/bay-3/command", CommandJson.encode(
                new Command("c-1", "Jo", OptionalLong.empty(), new Command.End())), true)));
        step();
        assertThat(commands).isEmpty();
        assertThat(wire.sent("/answer")).isEmpty();
    }

    @Test
    void answersThatWereUnderWayWhenTheConnectionBrokeGoOutAgain() {
        online();
        for (int i = 0; i < 6; i++) {
            link.answer(new Answer("c-" + i, true, null, 3));
        }
        step();
        assertThat(wire.sent("/answer")).hasSize(4);
        wire.fail("gone");
        step();
        nowMs += 1000;
        step();
        wire.accept();
        step();
        wire.acknowledgeAll();
        step();
        assertThat(wire.sent("/answer")).hasSize(6).first().asString().contains("c-0");
    }

    @Test
    void aLastWillThatComesLateIsSetRight() {
        online();
        wire.acknowledgeAll();
        step();
        wire.published.clear();
        wire.arrive("cupbeam/north/bay-3/health",
                HealthJson.encode(new Health(Health.State.LOST, 0, "boot", null)));
        step();
        assertThat(wire.sent("/health")).hasSize(1).first().asString().contains("\"online\"");
    }

    @Test
    void aJournalThatCannotBeReadOrWrittenDoesNotKeepTheLaneFromSayingSo() throws Exception {
        outbox.last = 3;
        outbox.failure = journalFailure();
        online();
        assertThat(wire.sent("/health")).hasSize(1);
        assertThat(link.trouble()).isEqualTo(outbox.failure.getMessage());
        outbox.failure = null;
        step();
        assertThat(wire.sent("/event")).hasSize(3);
        assertThat(link.trouble()).isNull();
    }

    private static JournalException journalFailure() throws Exception {
        Path inTheWay = Files.createTempFile("in-the-way", "");
        try {
            Journal.<String>open(inTheWay.resolve("j.db"), "s", "l", null, Lane.NOW).close();
            throw new AssertionError("opened");
        } catch (JournalException e) {
            return e;
        } finally {
            Files.delete(inTheWay);
        }
    }

    @Test
    void leavingSaysOfflineAndWaitsUntilTheBrokerHasTakenThat() {
        online();
        wire.acknowledgeAll();
        step();
        wire.published.clear();
        link.askToLeave();
        step();
        assertThat(wire.sent("/health")).hasSize(1).first().asString().contains("\"offline\"");
        nowMs += 2_999;
        step();
        assertThat(wire.left).isFalse();
        wire.acknowledgeAll();
        step();
        assertThat(wire.left).isTrue();
        link.close();
        assertThat(wire.closed).isTrue();
    }

    @Test
    void leavingABrokerThatDoesNotAnswerTakesThreeSeconds() {
        online();
        link.askToLeave();
        step();
        nowMs += 3_000;
        step();
        assertThat(wire.left).isTrue();
    }

    @Test
    void leavingWhileTheBrokerIsAwayTakesNoTime() {
        link.health(Lane.report());
        step();
        wire.fail("away");
        step();
        link.askToLeave();
        step();
        assertThat(wire.left).isTrue();
        assertThat(wire.published).isEmpty();
    }
}
