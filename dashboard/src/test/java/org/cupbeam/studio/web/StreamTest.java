package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class StreamTest {
    private final Stream stream = new Stream("abc");
    private final Board board = new Board();

    @Test
    void putsAnEventInTheFormOfTheStandard() {
        stream.join(board);
        stream.say("score", json("{\"a\":1}"));

        assertThat(board.heard).containsExactly("retry: 1500\n\n", "id: abc-1\nevent: score\ndata: {\"a\":1}\n\n");
    }

    @Test
    void givesWhoeverComesLaterTheLatestOfEachKindInTheOrderOfTheKinds() {
        stream.say("score", json("1"));
        stream.say("health", json("2"));
        stream.say("score", json("3"));
        stream.join(board);

        assertThat(board.heard.subList(1, 3)).containsExactly("id: abc-3\nevent: score\ndata: 3\n\n",
                "id: abc-2\nevent: health\ndata: 2\n\n");
    }

    @Test
    void forgetsWhatWasOnlyMentioned() {
        stream.mention("answer", json("1"));
        stream.join(board);

        assertThat(board.heard).containsExactly("retry: 1500\n\n");
    }

    @Test
    void putsAnEventIntoBytesOnceHoweverManyWatch() {
        Board other = new Board();
        stream.join(board);
        stream.join(other);
        stream.say("score", json("1"));

        assertThat(board.last).isSameAs(other.last);
    }

    @Test
    void forgetsAWatcherThatIsGone() {
        stream.join(board);
        board.takes = false;
        stream.say("score", json("1"));

        assertThat(stream.watchers()).isZero();
    }

    @Test
    void letsEverybodyGoWhenItEndsAndWhoeverComesAfter() {
        stream.join(board);
        stream.end();
        Board late = new Board();
        stream.join(late);

        assertThat(board.ended).isTrue();
        assertThat(late.ended).isTrue();
    }

    private static byte[] json(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static final class Board implements Stream.Watcher {
        final List<String> heard = new ArrayList<>();
        byte[] last;
        boolean takes = true;
        boolean ended;

        @Override
        public boolean offer(byte[] frame) {
            last = frame;
            heard.add(new String(frame, StandardCharsets.UTF_8));
            return takes;
        }

        @Override
        public void end() {
            ended = true;
        }
    }
}
