package org.cupbeam.track;

/**
 * The balls on their way.
 *
 * <p>Every crossing that could be a ball's goes to the ball that it fits best; at the first beam it may begin a new one.
 * What fits none was a foot's, a hand's or a putter's, and leaves no trace here.
 */
final class Flight {
    private static final int MOST = 8;
    /** A ball hangs on the lip, or circles it, so long at most. */
    private static final long LINGER_NS = 500_000_000;
    private static final long PROMPT_NS = 150_000_000;
    private static final double CREEP_MM = 5;

    private final Lay lay;
    private final Room room;
    private final LaneBelief lane;
    private final Strikes strikes;
    private final TrackSink sink;
    private final Claims claims;
    private final Verdict verdict;
    private final Settlement settlement;
    private final Ball[] balls = new Ball[MOST];
    private int count;

    Flight(Lay lay, Room room, LaneBelief lane, Strikes strikes, TrackSink sink) {
        this.lay = lay;
        this.room = room;
        this.lane = lane;
        this.strikes = strikes;
        this.sink = sink;
        claims = new Claims(lay, room, lane);
        verdict = new Verdict(lay, lane);
        settlement = new Settlement(lay, room, lane, verdict);
        for (int i = 0; i < MOST; i++) {
            balls[i] = new Ball(lay);
        }
    }

    /** Takes a pulse of a beam. */
    void crossing(int beam, long onNs, long offNs) {
        if (!claims.couldBeABall(beam, onNs, offNs)) {
            return;
        }
        int index = claims.freeAt(balls, count, beam, onNs, offNs);
        if (index >= 0) {
            balls[index].cross(beam, onNs, offNs);
        } else if ((index = claims.touchedAt(balls, count, beam, onNs, offNs)) >= 0) {
            balls[index].part(lane);
            balls[index].cross(beam, onNs, offNs);
        } else if ((index = claims.slowedAt(balls, count, beam, onNs, offNs)) >= 0) {
            balls[index].slow(beam, onNs, offNs, lane);
        } else if (claims.mayBeginAt(beam, onNs, offNs)) {
            index = add();
            balls[index].begin(beam, onNs, offNs, lane);
        } else {
            return;
        }
        if (balls[index].crossings().count() > 1) {
            meetStrike(balls[index]);
        }
        balls[index].due(givenUpNs(balls[index]));
    }

    /** When a ball is settled if nothing more is seen of it, or given up if the beam beside its first should have. */
    private long givenUpNs(Ball ball) {
        Crossings crossings = ball.crossings();
        long stopsNs = ball.stopsNs() + LINGER_NS;
        int next = crossings.lastBeam() + 1;
        long leftNs = crossings.timeNs(crossings.lastS());
        boolean pairAhead = next < lay.beams && lay.isBeforeHole(next) == lay.isBeforeHole(crossings.lastBeam())
                && room.isClear(lay.channel[next], leftNs, leftNs);
        if (crossings.count() > 1 || !pairAhead) {
            return stopsNs;
        }
        Roll roll = ball.current();
        double surelyMm = roll.finishMm() - 4 * roll.finishSdMm() - CREEP_MM;
        return surelyMm > lay.departureMm(next)
                ? Math.min(stopsNs, crossings.timeNs(1.2 * roll.timeAtS(lay.departureMm(next)) + 0.05)) : stopsNs;
    }

    private int add() {
        if (count == MOST) {
            remove(0);
        }
        return count++;
    }

    private void remove(int index) {
        Ball gone = balls[index];
        System.arraycopy(balls, index + 1, balls, index, count - index - 1);
        balls[--count] = gone;
    }

    private void meetStrike(Ball ball) {
        if (!ball.hasStrike() && strikes.count() > 0) {
            double atS = ball.crossings().onS(0);
            ball.strike(strikes.takeFor(ball.crossings().timeNs(atS), ball.approach().speedMmPerS(atS),
                    lane.decelerationMmPerS2()));
        }
    }

    /**
     * Takes a drop into the cup, if a ball was on its way to it.
     *
     * @param nowNs    when that is known
     * @param doubtful it may be the rattle of the ball before: only one expected just then is taken to have dropped
     */
    void drop(long onNs, long nowNs, boolean doubtful) {
        int index = claims.dropping(balls, count, onNs, doubtful ? PROMPT_NS : Sensor.NEVER);
        if (index >= 0) {
            meetStrike(balls[index]);
            strikes.felt(balls[index].hasStrike());
            Attempt attempt = verdict.holed(balls[index], nowNs);
            remove(index);
            sink.attempt(attempt);
        }
    }

    /** When the first ball is due. */
    long dueNs() {
        long earliest = Sensor.NEVER;
        for (int i = 0; i < count; i++) {
            earliest = Math.min(earliest, balls[i].dueNs());
        }
        return earliest;
    }

    /** Settles a ball that is due by this time. */
    void settle(long nowNs) {
        for (int i = 0; i < count; i++) {
            if (balls[i].dueNs() <= nowNs) {
                meetStrike(balls[i]);
                boolean unfelt = room.feelsStrikes() && strikes.isTrusted() && !balls[i].hasStrike();
                Attempt attempt = settlement.settle(balls[i], nowNs);
                if (attempt != null) {
                    strikes.felt(balls[i].hasStrike());
                }
                if (attempt != null && !unfelt) {
                    remove(i);
                    sink.attempt(attempt);
                } else {
                    strikes.giveBack(balls[i].struckNs());
                    remove(i);
                }
                return;
            }
        }
    }
}
