package org.cupbeam.journal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Data;

/**
 * What is written in one transaction: all of it, or nothing.
 *
 * @param reset  what came before no longer counts for the state of play; the input of this entry is the first again
 * @param input  what the play was told; null where nothing
 * @param events what comes of it, in order
 * @param state  small things to remember, by key
 * @param answer the answer to a command, to be given again when the command comes again; null where none
 * @param <I>    the play's inputs
 */
public record Entry<I>(boolean reset, I input, List<Said> events, Map<String, String> state, Answer answer) {

    /**
     * An event before it has its number.
     *
     * @param time the wall clock, right or not
     */
    public record Said(Instant time, Data data) {
    }

    public Entry {
        events = List.copyOf(events);
        state = Map.copyOf(state);
    }

    /** Nothing yet. */
    public static <I> Entry<I> empty() {
        return new Entry<>(false, null, List.of(), Map.of(), null);
    }

    public Entry<I> withReset() {
        return new Entry<>(true, input, events, state, answer);
    }

    public Entry<I> with(I newInput) {
        return new Entry<>(reset, newInput, events, state, answer);
    }

    public Entry<I> with(Instant time, Data data) {
        List<Said> more = new ArrayList<>(events);
        more.add(new Said(time, data));
        return new Entry<>(reset, input, more, state, answer);
    }

    public Entry<I> with(String key, String value) {
        Map<String, String> more = new LinkedHashMap<>(state);
        more.put(key, value);
        return new Entry<>(reset, input, events, more, answer);
    }

    public Entry<I> with(Answer newAnswer) {
        return new Entry<>(reset, input, events, state, newAnswer);
    }
}
