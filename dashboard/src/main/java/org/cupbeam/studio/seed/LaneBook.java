package org.cupbeam.studio.seed;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.drill.Happening.DuelEnded;
import org.cupbeam.drill.Happening.Passed;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Happening.RunEnded;
import org.cupbeam.drill.Happening;
import org.cupbeam.drill.Play;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Source;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Tags;

/** What a lane writes into its journal, in the words and order in which a lane does. */
final class LaneBook {
    /** An event, and when it truly was: a lane's clock may not know. */
    record Written(long atMs, Event event) {
    }

    /** A game as it was begun: its runs and its duel are named after its first event. */
    private record Begun(long first, Play play, Tags tags) {
    }

    private final Source source;
    private final boolean full;
    private final List<Written> written = new ArrayList<>();
    private long sequence;
    private int boots;
    private long bootMs;
    private long clockKnownMs;
    private boolean synchronised = true;
    private Begun begun;
    private Green green;

    /** @param full whether the lane has every sensor there is */
    LaneBook(Source source, boolean full) {
        this.source = source;
        this.full = full;
    }

    boolean full() {
        return full;
    }

    Green green() {
        return green;
    }

    /** The number of the last event. */
    long sequence() {
        return sequence;
    }

    /**
     * The machine was started.
     *
     * @param clockKnown after which its clock can be believed; the start itself where it is at once
     */
    void starts(long atMs, long clockKnown) {
        boots++;
        bootMs = atMs;
        clockKnownMs = clockKnown;
        synchronised = clockKnown <= atMs;
        begun = null;
    }

    void green(Green today) {
        green = today;
    }

    void begins(Play play, Tags tags, long atMs) {
        begun = new Begun(sequence + 1, play, tags);
        for (int i = 0; i < play.players().size(); i++) {
            write(atMs, new Data.RunStarted(stamp(atMs), whose(i), play.drill(), tags, play.limitMm()));
        }
    }

    void tells(List<Happening> happenings, Putt puttOrNull, long atMs) {
        for (Happening each : happenings) {
            Data data = each instanceof Putted putted ? attempt(putted, puttOrNull, atMs) : ended(each, atMs);
            write(atMs, data);
        }
    }

    /** A putt while nothing is played. */
    void warmsUp(Putt putt, long atMs) {
        write(atMs, new Data.Attempt(stamp(atMs), putt, null, Tags.NONE, green.said(Tags.NONE)));
    }

    void corrects(Data.Correction.What what, long of, String by, String reason, long atMs) {
        write(atMs, new Data.Correction(stamp(atMs), what, of, by, reason));
    }

    /** Whether anything is being played, or was since the machine was started. */
    boolean hasBegun() {
        return begun != null;
    }

    /** The day is over; by now the clock is known. */
    void closes() {
        if (!synchronised && !written.isEmpty()) {
            tellClock(Math.max(clockKnownMs, written.get(written.size() - 1).atMs()));
        }
    }

    /** What was written since the last time. */
    List<Written> take() {
        List<Written> all = List.copyOf(written);
        written.clear();
        return all;
    }

    private Data attempt(Putted putted, Putt putt, long atMs) {
        Data.Of of = whose(begun.play().players().indexOf(putted.player()));
        org.cupbeam.event.Play play = new org.cupbeam.event.Play(of.run(), of.duel(), of.player(),
                begun.play().drill().name(), putted.station(), putted.stationMm(), putted.visit(), putted.ball(),
                putted.ballsLeft());
        return new Data.Attempt(stamp(atMs), putt, play, begun.tags(), green.said(begun.tags()));
    }

    private Data ended(Happening happening, long atMs) {
        if (happening instanceof RunEnded ended) {
            int known = ended.run().tally().finishes();
            return new Data.RunEnded(stamp(atMs), whose(begun.play().players().indexOf(ended.player())),
                    ended.run().cleared(), ended.run().tally().attempts(), ended.run().tally().holed(),
                    known == 0 ? Double.NaN : ended.run().tally().meanFinishMm(), ended.run().endedBy().orElseThrow());
        }
        if (happening instanceof DuelEnded ended) {
            return new Data.DuelEnded(stamp(atMs), duel(), ended.winner().orElse(null));
        }
        if (happening instanceof Passed passed) {
            return new Data.RunPassed(stamp(atMs), whose(begun.play().players().indexOf(passed.from())));
        }
        throw new IllegalArgumentException("not told of here: " + happening);
    }

    private Data.Of whose(int player) {
        return new Data.Of(source.journal() + "-" + (begun.first() + player), duel(),
                begun.play().players().get(player), player + 1);
    }

    private String duel() {
        return begun.play().duel() ? source.journal() + "-duel-" + begun.first() : null;
    }

    private Stamp stamp(long atMs) {
        if (!synchronised && atMs >= clockKnownMs) {
            tellClock(atMs);
        }
        return new Stamp(source.journal() + "-" + boots, (atMs - bootMs) * 1_000_000,
                synchronised ? Stamp.Clock.SYNCHRONISED : Stamp.Clock.UNSYNCHRONISED);
    }

    private void tellClock(long atMs) {
        synchronised = true;
        write(atMs, new Data.Clock(stamp(atMs), Instant.ofEpochMilli(atMs)));
    }

    private void write(long atMs, Data data) {
        Instant wall = Instant.ofEpochMilli(data.stamp().clock() == Stamp.Clock.SYNCHRONISED ? atMs : atMs - bootMs);
        written.add(new Written(atMs, new Event(source, ++sequence, wall, data)));
    }
}
