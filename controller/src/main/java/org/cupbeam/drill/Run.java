package org.cupbeam.drill;

import java.util.Optional;

/**
 * One player's go through a drill, at one moment.
 *
 * @param station where it stands, from 1
 * @param visit   the stay there
 * @param balls   that the run has left; matters where the supply is for the whole run
 * @param cleared stations cleared: the furthest, whatever steps back followed
 * @param tally   what it adds up to
 * @param endedBy what ended it; empty while it goes on
 */
public record Run(int station, Visit visit, int balls, int cleared, Tally tally, Optional<EndedBy> endedBy) {
    /**
     * A run that steps back again and again would never end by the rules alone: after so many attempts it is out of
     * balls. Far beyond what any other run can use.
     */
    public static final int ATTEMPTS_MAX = 50_000;

    /** A run about to begin, at the first station. */
    public static Run begin(Drill drill) {
        return new Run(1, new Visit(1, drill.balls(), 0, 0), drill.balls(), 0, Tally.NONE, Optional.empty());
    }

    /** The run after one more attempt. */
    public Shot after(Drill drill, double limitMm, Putt putt) {
        if (ended()) {
            throw new IllegalStateException("the run has ended: " + endedBy.get().word());
        }
        boolean overshot = putt.overshoots(limitMm);
        Run counted = counted(drill, putt, overshot);
        Run moved = counted.moved(drill, overshot).bounded();
        return new Shot(moved, visit.number(), station, counted.visit.attempts(), counted.visit.left(), overshot);
    }

    public boolean ended() {
        return endedBy.isPresent();
    }

    public Score score() {
        return new Score(cleared, tally.attempts(), tally.meanFinishMm());
    }

    Run ended(EndedBy by) {
        return new Run(station, visit, balls, cleared, tally, Optional.of(by));
    }

    /** After the attempt's ball and its penalty's, where it stands. */
    private Run counted(Drill drill, Putt putt, boolean overshot) {
        Visit then = visit.after(putt.holed());
        int kept = putt.holed() ? balls : balls - 1;
        if (overshot && drill.penalty() == Penalty.LOSE_BALL && then.left() > 0) {
            then = then.withoutOneMore();
            kept--;
        }
        boolean ofRun = drill.supply() == Supply.WHOLE_RUN;
        return new Run(station, then, ofRun ? kept : balls, cleared, tally.plus(putt), endedBy);
    }

    private Run moved(Drill drill, boolean overshot) {
        if (visit.holed() == drill.holed()) {
            Run further = new Run(station, visit, balls, Math.max(cleared, station), tally, endedBy);
            return station == drill.stations().count()
                    ? further.ended(EndedBy.CLEARED_ALL) : further.arrived(drill, station + 1);
        }
        if (visit.left() == 0) {
            return ended(EndedBy.OUT_OF_BALLS);
        }
        if (!overshot) {
            return this;
        }
        return switch (drill.penalty()) {
            case NONE, LOSE_BALL -> this;
            case BACK_ONE -> station > 1 ? arrived(drill, station - 1) : this;
            case END_RUN -> ended(EndedBy.OVERSHOOT);
        };
    }

    private Run bounded() {
        return !ended() && tally.attempts() >= ATTEMPTS_MAX ? ended(EndedBy.OUT_OF_BALLS) : this;
    }

    private Run arrived(Drill drill, int there) {
        int supplied = switch (drill.supply()) {
            case EVERY_STATION -> drill.balls();
            case WHOLE_RUN -> balls;
        };
        return new Run(there, new Visit(visit.number() + 1, supplied, 0, 0), balls, cleared, tally, endedBy);
    }
}
