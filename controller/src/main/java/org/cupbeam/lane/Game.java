package org.cupbeam.lane;

import java.time.Instant;
import java.util.List;
import java.util.function.Supplier;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.Data;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Putt.How;
import org.cupbeam.event.Score;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Tags;
import org.cupbeam.journal.Entry;
import org.cupbeam.lane.Card.Change;
import org.cupbeam.lane.Told.Begun;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.Attempt;
import org.cupbeam.track.Attempt.Outcome;
import org.cupbeam.track.Tracker;

/**
 * The play as it goes on. Whatever happens to it is handed to the scribe first, whole: what the scribe cannot take has
 * not happened. Each deed can be a command's; its id is then given, and answered. The lane's thread alone.
 */
final class Game {
    /** A play that was told so much begins anew with its next round, so that coming back never takes long. */
    static final int TOLD_MAX = 2_000;
    /** Remembered in the journal: the boot whose earlier times the host cannot know yet. */
    static final String CLOCK_OWED = "clock.owed";

    private final Scribe scribe;
    private final Minutes minutes;
    private final ScoreSheet sheet;
    private final Wall wall;
    private final Supplier<GreenNow> green;
    private final double rigLimitMm;
    private final Tracker tracker;
    private boolean clockOwed;
    private Card card;
    private long lost;

    /**
     * @param tracker of whom nothing is asked but what the green is like, and what no sensor sees
     */
    Game(Card card, Rig rig, Tracker tracker, Scribe scribe, Minutes minutes, ScoreSheet sheet, Wall wall,
         boolean clockOwed) {
        this.card = card;
        this.scribe = scribe;
        this.minutes = minutes;
        this.sheet = sheet;
        this.wall = wall;
        this.clockOwed = clockOwed;
        double sidePercent = rig.sidePercent() == 0 ? Double.NaN : rig.sidePercent(); // 0 is what a rig file leaves unsaid
        green = () -> new GreenNow(tracker.stimpFt(), tracker.stimpSdFt(), rig.uphillPercent(), sidePercent);
        rigLimitMm = rig.limitMm();
        this.tracker = tracker;
    }

    Card card() {
        return card;
    }

    /** How many attempts and gestures were lost, since too much waited for the disk. */
    long lost() {
        return lost;
    }

    Score score() {
        return score(card);
    }

    private Score score(Card shown) {
        return sheet.of(shown, green.get(), wall.now());
    }

    /** A play begins, whatever was played before. */
    boolean begin(Command.Start start, String command) {
        return begin(start.drill(), start.players(), start.tags(), start.drill().limitMm(rigLimitMm), command);
    }

    private boolean begin(Drill drill, List<String> players, Tags tags, double limitMm, String command) {
        long first = scribe.next() + card.endings().size();
        return tell(new Begun(first, drill, players, tags, limitMm), wall.nowNs(), wall.nowNs(), command);
    }

    /** The sensors resolved a putt. */
    boolean sensed(Attempt attempt) {
        return tried(attempt, How.SENSED, null);
    }

    /**
     * Somebody says that there was a miss.
     *
     * @param finishMm NaN: short of where a sensor sees
     */
    boolean missed(double finishMm, String command) {
        long now = wall.nowNs();
        return tried(Double.isNaN(finishMm) ? Attempt.unseen(now, tracker.unseenMm()) : new Attempt(now, now, Outcome.MISSED,
                finishMm, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, false), How.ENTERED, command);
    }

    /** The pedal says that there was a miss, unseen. */
    boolean missed(long atNs) {
        return tried(Attempt.unseen(atNs, tracker.unseenMm()), How.ENTERED, null);
    }

    private boolean tried(Attempt attempt, How how, String command) {
        if (card.startsNext() && card.told() >= TOLD_MAX) {
            Begun again = card.begun();
            begin(again.drill(), again.players(), again.tags(), again.limitMm(), null);
        }
        Putt putt = Words.putt(attempt, overshot(attempt), how);
        boolean taken = tell(new Told.Tried(scribe.next(), putt), attempt.timeNs(), attempt.resolvedNs(), command);
        lost += taken ? 0 : 1;
        return taken;
    }

    private boolean overshot(Attempt attempt) {
        return card.play() == null ? attempt.overshoots(rigLimitMm)
                : Card.rules(Words.putt(attempt, false, How.SENSED)).overshoots(card.play().limitMm());
    }

    /** The last attempt does not count; there has to be one. */
    boolean takeBack(String by, String command) {
        Told told = new Told.TakenBack(scribe.next());
        Stamp at = wall.stamp(wall.nowNs());
        return take(told, card.after(told), List.of(Minutes.takenBack(card, by, at)), wall.now(), wall.now(), command);
    }

    boolean pass(String command) {
        return tell(new Told.Passed(scribe.next()), wall.nowNs(), wall.nowNs(), command);
    }

    boolean end(String command) {
        return tell(new Told.Ended(scribe.next()), wall.nowNs(), wall.nowNs(), command);
    }

    /** An attempt of the record does not count there; the play stays as it is. */
    boolean voided(long of, String by, String command) {
        Data data = new Data.Correction(wall.stamp(wall.nowNs()), Data.Correction.What.VOIDED, of, by, null);
        return write(Entry.<Told>empty().with(wall.now(), data), null, accepted(command, card));
    }

    /** Tells the host how to set this boot's earlier times right, if the wall clock has become believable. */
    void tellClock() {
        if (clockOwed && wall.clock() == Stamp.Clock.SYNCHRONISED) {
            Data data = new Data.Clock(wall.stamp(wall.nowNs()), wall.now());
            clockOwed = !write(Entry.<Told>empty().with(wall.now(), data).with(CLOCK_OWED, ""), null, null);
        }
    }

    private boolean tell(Told told, long atNs, long untilNs, String command) {
        Change change = card.after(told);
        List<Data> said = minutes.of(card, told, change, wall.stamp(atNs), wall.stamp(untilNs), green.get());
        return take(told, change, said, wall.at(atNs), wall.at(untilNs), command);
    }

    private boolean take(Told told, Change change, List<Data> said, Instant at, Instant until, String command) {
        Entry<Told> entry = Entry.<Told>empty().with(told);
        if (told instanceof Begun || change.card().play() == null) {
            entry = entry.withReset();
        }
        for (Data each : said) {
            entry = entry.with(each instanceof Data.Attempt || each instanceof Data.RunStarted ? at : until, each);
        }
        boolean taken = write(entry, score(change.card()), accepted(command, change.card()));
        card = taken ? change.card() : card;
        return taken;
    }

    private static Answer accepted(String command, Card then) {
        return command == null ? null : new Answer(command, true, null, then.sequence());
    }

    private boolean write(Entry<Told> entry, Score score, Answer answer) {
        Entry<Told> whole = answer == null ? entry : entry.with(answer);
        boolean owes = wall.clock() == Stamp.Clock.UNSYNCHRONISED && !clockOwed && !entry.events().isEmpty();
        boolean taken = scribe.take(owes ? whole.with(CLOCK_OWED, wall.boot()) : whole, score, answer);
        clockOwed |= owes && taken;
        return taken;
    }
}
