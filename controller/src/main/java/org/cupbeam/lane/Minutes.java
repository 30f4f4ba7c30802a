package org.cupbeam.lane;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.drill.Happening;
import org.cupbeam.drill.Happening.DuelEnded;
import org.cupbeam.drill.Happening.Passed;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Happening.RunEnded;
import org.cupbeam.drill.Happening.TakenBack;
import org.cupbeam.event.Data;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Play;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Tags;
import org.cupbeam.lane.Card.Change;
import org.cupbeam.lane.Told.Begun;
import org.cupbeam.lane.Told.Tried;

/** The events that come of what the play was told. */
final class Minutes {
    private final String journal;

    /** @param journal the journal's id, with whose first letters runs and duels are named */
    Minutes(String journal) {
        this.journal = journal.substring(0, Math.min(8, journal.length()));
    }

    /**
     * What is said of a change, in order.
     *
     * @param at    when it happened
     * @param until when that was settled
     */
    List<Data> of(Card before, Told told, Change change, Stamp at, Stamp until, GreenNow green) {
        List<Data> said = new ArrayList<>();
        Card card = change.card();
        if (told instanceof Begun) {
            before.endings().forEach(ended -> said.add(ended(before, ended, at)));
        }
        if (change.starts()) {
            int round = told instanceof Begun ? 1 : before.play().standing().round() + 1;
            for (int i = 0; i < card.play().players().size(); i++) {
                said.add(new Data.RunStarted(at, whose(card, round, i), card.begun().drill(), card.begun().tags(),
                        card.begun().limitMm()));
            }
        }
        if (told instanceof Tried tried && card.play() == null) {
            said.add(new Data.Attempt(at, tried.putt(), null, Tags.NONE, green));
        }
        for (Happening each : change.happenings()) {
            said.add(each instanceof Putted putted ? attempt(card, putted, ((Tried) told).putt(), at, green)
                    : ended(card, each, until));
        }
        return said;
    }

    /** That an attempt of the play, or the last outside any, does not count. */
    static Data takenBack(Card before, String by, Stamp at) {
        long of = before.made().get(before.made().size() - 1).sequence();
        return new Data.Correction(at, Data.Correction.What.TAKEN_BACK, of, by, null);
    }

    private Data attempt(Card card, Putted putted, Putt putt, Stamp at, GreenNow green) {
        Data.Of of = whose(card, putted.round(), putted.player());
        Play play = new Play(of.run(), of.duel(), of.player(), card.begun().drill().name(), putted.station(),
                putted.stationMm(), putted.visit(), putted.ball(), putted.ballsLeft());
        return new Data.Attempt(at, putt, play, card.begun().tags(), green);
    }

    private Data ended(Card card, Happening happening, Stamp at) {
        if (happening instanceof RunEnded ended) {
            int misses = ended.run().tally().finishes();
            return new Data.RunEnded(at, whose(card, ended.round(), ended.player()), ended.run().cleared(),
                    ended.run().tally().attempts(), ended.run().tally().holed(),
                    misses == 0 ? Double.NaN : ended.run().tally().meanFinishMm(), ended.run().endedBy().orElseThrow());
        }
        if (happening instanceof DuelEnded ended) {
            return new Data.DuelEnded(at, duel(card, ended.round()), ended.winner().orElse(null));
        }
        if (happening instanceof Passed passed) {
            return new Data.RunPassed(at, whose(card, card.play().standing().round(), passed.from()));
        }
        throw new IllegalArgumentException("said elsewhere: " + happening);
    }

    private Data.Of whose(Card card, int round, String player) {
        return whose(card, round, card.play().players().indexOf(player));
    }

    private Data.Of whose(Card card, int round, int player) {
        return new Data.Of(run(card, round, player), duel(card, round), card.play().players().get(player), player + 1);
    }

    /** A run's id; null where its round has not begun. */
    String run(Card card, int round, int player) {
        Long first = card.rounds().get(round);
        return first == null ? null : journal + "-" + (first + player);
    }

    /** A duel's id; null where there is none. */
    String duel(Card card, int round) {
        Long first = card.rounds().get(round);
        return first == null || !card.play().duel() ? null : journal + "-duel-" + first;
    }
}
