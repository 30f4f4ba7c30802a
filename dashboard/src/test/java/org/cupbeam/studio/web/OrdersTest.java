package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.Topics;
import org.junit.jupiter.api.Test;

class OrdersTest {
    private static final Topics ONE = new Topics("home", "one");
    private static final Topics TWO = new Topics("home", "two");

    private final List<Command> sent = new ArrayList<>();
    private final Orders orders = new Orders(Duration.ofSeconds(20));

    @Test
    void handsTheLanesAnswerToWhoeverAsked() {
        takeEverything();
        CompletableFuture<Answer> first = orders.give(ONE, command("a"));
        CompletableFuture<Answer> second = orders.give(ONE, command("b"));
        orders.answered(ONE, new Answer("b", false, "no", 7));

        assertThat(second).isCompletedWithValue(new Answer("b", false, "no", 7));
        assertThat(first).isNotDone();
        assertThat(orders.waiting()).isEqualTo(1);
    }

    @Test
    void anAnswerOfAnotherLaneIsNone() {
        takeEverything();
        CompletableFuture<Answer> asked = orders.give(ONE, command("a"));
        orders.answered(TWO, new Answer("a", true, null, 7));

        assertThat(asked).isNotDone();
    }

    @Test
    void theSameCommandGivenTwiceIsSentOnceAndAnsweredTwice() {
        takeEverything();
        CompletableFuture<Answer> first = orders.give(ONE, command("a"));
        CompletableFuture<Answer> again = orders.give(ONE, command("a"));
        orders.answered(ONE, new Answer("a", true, null, 7));

        assertThat(sent).hasSize(1);
        assertThat(first).isCompletedWithValue(new Answer("a", true, null, 7));
        assertThat(again).isCompletedWithValue(new Answer("a", true, null, 7));
        assertThat(orders.waiting()).isZero();
    }

    @Test
    void saysSoWhenNothingCanBeSent() {
        CompletableFuture<Answer> asked = orders.give(ONE, command("a"));

        assertThatThrownBy(asked::join).hasRootCauseInstanceOf(Refusal.class).hasMessageContaining("Nothing was sent");
        assertThat(orders.waiting()).isZero();
    }

    @Test
    void saysSoWhenTheLaneDoesNotAnswer() {
        Orders hasty = new Orders(Duration.ofMillis(20));
        hasty.sendBy((lane, command) -> true);
        CompletableFuture<Answer> asked = hasty.give(ONE, command("a"));

        assertThatThrownBy(() -> asked.get(10, TimeUnit.SECONDS)).hasMessageContaining("has not answered");
        assertThat(hasty.waiting()).isZero();
        hasty.answered(ONE, new Answer("a", true, null, 7));
    }

    @Test
    void takesAnAnswerThatComesBeforeSendingReturns() {
        orders.sendBy((lane, command) -> {
            orders.answered(lane, new Answer(command.id(), true, null, 3));
            return true;
        });

        assertThat(orders.give(ONE, command("a"))).isCompletedWithValue(new Answer("a", true, null, 3));
    }

    @Test
    void hasALimitOnHowManyWait() {
        takeEverything();
        for (int i = 0; i < 256; i++) {
            orders.give(ONE, command("c" + i));
        }

        assertThatThrownBy(() -> orders.give(ONE, command("one more")).join()).hasMessageContaining("Too many");
        assertThat(sent).hasSize(256);
    }

    private void takeEverything() {
        orders.sendBy((lane, command) -> sent.add(command));
    }

    private static Command command(String id) {
        return new Command(id, "Kim", OptionalLong.empty(), new Command.Pass());
    }
}
