package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.junit.jupiter.api.Test;

class SorterTest {
    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private long nowNs;
    private long keptElsewhere;
    private Patience patience = Patience.WITH_LANES;
    private final Sorter sorter = sorter(List.of());

    @Test
    void setsAsideWhatIsNoEvent() {
        take("not json");
        take("{}");
        take("{\"specversion\":\"1.0\",\"source\":\"/elsewhere\",\"id\":\"0000000000000001\"}");

        assertThat(sorter.batch().deadLetters()).extracting(Batch.DeadLetter::reason).hasSize(3)
                .anySatisfy(reason -> assertThat(reason).contains("is not JSON"))
                .anySatisfy(reason -> assertThat(reason).contains("specversion"))
                .anySatisfy(reason -> assertThat(reason).contains("source"));
    }

    @Test
    void refusesWhatIsTooLargeUnread() {
        sorter.take(Message.of(lane.topic(), new byte[Message.LIMIT_BYTES + 1]));

        Batch.DeadLetter letter = sorter.batch().deadLetters().get(0);
        assertThat(letter.reason()).contains("65537 bytes").contains("at most 65536");
        assertThat(letter.payload()).hasSizeLessThan(1_000);
    }

    @Test
    void refusesALaneThatSpeaksUnderAnothersTopic() {
        Event event = lane.puttsOutsideAnyRun();
        sorter.take(Message.of("cupbeam/home/two/event", ScriptedLane.json(event)));

        assertThat(sorter.batch().deadLetters()).extracting(Batch.DeadLetter::reason)
                .singleElement().asString().contains("under that lane's own topic");
    }

    /** A store has no place for such a time: ingest took it for the store that failed, and took in no lane's events any more. */
    @Test
    void setsAsideAnEventOfATimeThatNoCalendarHas() {
        take(new String(ScriptedLane.json(lane.puttsOutsideAnyRun()), StandardCharsets.UTF_8)
                .replaceFirst("\"time\":\"[^\"]*\"", "\"time\":\"+999999999-12-31T23:59:59Z\""));

        Batch batch = sorter.batch();
        assertThat(batch.arrivals()).isEmpty();
        assertThat(batch.deadLetters()).singleElement().extracting(Batch.DeadLetter::reason).asString()
                .startsWith("time: is \"+999999999-12-31T23:59:59Z\"");
    }

    @Test
    void keepsAnEventWhoseWordsMakeNoSenseSoThatItDoesNotComeForEver() {
        String json = new String(ScriptedLane.json(lane.puttsOutsideAnyRun()), StandardCharsets.UTF_8);
        take(json.replace("missed", "vanished"));
        sorter.take(Message.of(lane.topic(), ScriptedLane.json(lane.puttsOutsideAnyRun())));

        assertThat(sorter.batch().arrivals()).hasSize(2).first().satisfies(arrival -> {
            assertThat(arrival.event()).isNull();
            assertThat(arrival.problem()).contains("data.attempt.outcome").contains("vanished");
        });
        assertThat(sorter.upTo(lane.source)).isEqualTo(2);
    }

    @Test
    void keepsAnEventOfATypeFromTheFuture() {
        String json = new String(ScriptedLane.json(lane.puttsOutsideAnyRun()), StandardCharsets.UTF_8);
        take(json.replace("org.cupbeam.attempt.v1", "org.cupbeam.weather.v7"));

        assertThat(sorter.batch().arrivals()).singleElement().satisfies(a -> assertThat(a.problem())
                .contains("org.cupbeam.weather.v7").contains("kept for one that does"));
    }

    @Test
    void goesOnAfterAGapThatNobodyFills() {
        lane.puttsOutsideAnyRun();
        lane.puttsOutsideAnyRun();
        Message third = Message.of(lane.topic(), ScriptedLane.json(lane.puttsOutsideAnyRun()));
        sorter.take(third);
        sorter.giveUpOverdue();
        assertThat(sorter.batch().isEmpty()).isTrue();

        for (int again = 0; again < Patience.WITH_LANES.knocks(); again++) {
            nowNs += Patience.WITH_LANES.atFirst().toNanos();
            sorter.take(third);
        }
        sorter.giveUpOverdue();

        Batch batch = sorter.batch();
        assertThat(batch.missing()).singleElement().satisfies(gap -> {
            assertThat(gap.from()).isEqualTo(1);
            assertThat(gap.to()).isEqualTo(2);
        });
        assertThat(batch.arrivals()).extracting(Arrival::sequence).containsExactly(3L);
    }

    @Test
    void waitsMuchLongerForAGapInAJournalThatItHasKeptFrom() {
        Sorter later = sorter(List.of(new EventLog.Kept(lane.source, 1)));
        lane.puttsOutsideAnyRun();
        lane.puttsOutsideAnyRun();
        Message third = Message.of(lane.topic(), ScriptedLane.json(lane.puttsOutsideAnyRun()));
        for (int i = 0; i < 10; i++) {
            later.take(third);
        }
        nowNs += Patience.WITH_LANES.later().toNanos() - 1;
        later.giveUpOverdue();
        assertThat(later.batch().isEmpty()).isTrue();
        nowNs += 1;
        later.giveUpOverdue();
        assertThat(later.upTo(lane.source)).isEqualTo(3);
    }

    @Test
    void behindABridgeAHoleIsNotedSoonAndHoldsNothingUp() {
        patience = Patience.WITH_BRIDGES;
        Sorter centre = sorter(List.of(new EventLog.Kept(lane.source, 1)));
        for (int i = 0; i < 3; i++) {
            lane.puttsOutsideAnyRun();
        }
        centre.take(Message.of(lane.topic(), ScriptedLane.json(lane.puttsOutsideAnyRun())));
        assertThat(centre.holdsAny()).isTrue();
        nowNs += Patience.WITH_BRIDGES.later().toNanos();
        centre.giveUpOverdue();

        Batch batch = centre.batch();
        assertThat(batch.missing()).singleElement().satisfies(hole -> assertThat(hole.from() + " to " + hole.to())
                .isEqualTo("2 to 3"));
        assertThat(batch.arrivals()).extracting(Arrival::sequence).containsExactly(4L);
        assertThat(centre.holdsAny()).isFalse();
    }

    @Test
    void goesOnBehindWhatAnotherHostKeptMeanwhile() {
        Sorter knowsOne = sorter(List.of(new EventLog.Kept(lane.source, 1)));
        for (int i = 0; i < 3; i++) {
            lane.puttsOutsideAnyRun();
        }
        keptElsewhere = 3;
        knowsOne.take(Message.of(lane.topic(), ScriptedLane.json(lane.puttsOutsideAnyRun())));

        assertThat(knowsOne.batch().arrivals()).extracting(Arrival::sequence).containsExactly(4L);
        assertThat(knowsOne.upTo(lane.source)).isEqualTo(4);
    }

    @Test
    void believesNoNumberThatNoLaneCanHaveReached() {
        String json = new String(ScriptedLane.json(lane.puttsOutsideAnyRun()), StandardCharsets.UTF_8);
        for (int again = 0; again < 5; again++) {
            take(json.replace("0000000000000001", "9999999999999999"));
            nowNs += Patience.WITH_LANES.later().toNanos();
            sorter.giveUpOverdue();
        }
        take(json);

        assertThat(sorter.upTo(lane.source)).isEqualTo(1);
        assertThat(sorter.batch().deadLetters()).first().satisfies(letter ->
                assertThat(letter.reason()).contains("no lane is so far ahead"));
    }

    @Test
    void setsOnlySoManyAsideInAMinute() {
        for (int i = 0; i < 10 * Sorter.MOST_SET_ASIDE; i++) {
            take("rubbish " + i);
        }
        assertThat(sorter.batch().deadLetters()).hasSize(Sorter.MOST_SET_ASIDE);
        nowNs += 60_000_000_000L;
        take("rubbish later");
        assertThat(sorter.batch().deadLetters()).hasSize(1);
    }

    @Test
    void followsOnlySoManyJournalsOfOneLaneAndOthersNevertheless() {
        for (int i = 0; i < 10 * Sorter.MOST_OF_A_LANE; i++) {
            sorter.take(Message.of(lane.topic(), ScriptedLane.json(new ScriptedLane("one", "made-up-" + i).puttsOutsideAnyRun())));
        }
        assertThat(sorter.batch().arrivals()).hasSize(Sorter.MOST_OF_A_LANE);
        ScriptedLane other = new ScriptedLane("two", "j1");
        sorter.take(Message.of(other.topic(), ScriptedLane.json(other.puttsOutsideAnyRun())));
        assertThat(sorter.batch().arrivals()).hasSize(1);
    }

    /** Whoever holds most lets go: a lane with a real gap keeps its place beside one that floods. */
    @Test
    void holdsOnlySoManyBytesBehindGaps() {
        String json = new String(ScriptedLane.json(lane.puttsOutsideAnyRun()), StandardCharsets.UTF_8);
        take(json.replace("0000000000000001", "0000000000000003"));
        String padded = json.replaceFirst("\\{", "{" + " ".repeat(60_000));
        for (int journal = 0; journal < 3; journal++) {
            for (int i = 0; i < Sorter.MOST_HELD; i++) {
                take(padded.replace("0000000000000001", "%016d".formatted(i + 2)).replace(lane.source.journal(), "made-up-" + journal));
            }
        }
        assertThat(sorter.held()).isBetween(Sorter.MOST_HELD_BYTES - 64_000, Sorter.MOST_HELD_BYTES);
        take(json.replace("0000000000000001", "0000000000000002"));
        take(json);
        assertThat(sorter.upTo(lane.source)).isEqualTo(3);
    }

    @Test
    void tellsOfAnEventThatComesAgainWithOtherWords() {
        String json = new String(ScriptedLane.json(lane.puttsOutsideAnyRun()), StandardCharsets.UTF_8);
        take(json);
        assertThat(sorter.again()).isEmpty();
        take(json);
        Arrival other = sorter.again().get(0);
        sorter.batch();
        sorter.differs(other);

        assertThat(sorter.batch().deadLetters()).singleElement().satisfies(letter -> {
            assertThat(letter.reason()).contains("is kept already, and says something else");
            assertThat(letter.payload()).as("a name that was forgotten may be in it").isEmpty();
        });
    }

    private Sorter sorter(List<EventLog.Kept> kept) {
        return new Sorter(kept, source -> keptElsewhere, patience, Clock.fixed(Instant.EPOCH, ZoneOffset.UTC), () -> nowNs);
    }

    private void take(String payload) {
        sorter.take(Message.of(lane.topic(), payload.getBytes(StandardCharsets.UTF_8)));
    }
}
