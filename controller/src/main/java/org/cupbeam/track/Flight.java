package org.cupbeam.track;

import java.util.Arrays;
import org.cupbeam.track.PairGauge.Pass;

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
    private final Silence silence;
    private final TrackSink sink;
    private final Claims claims;
    private final Verdict verdict;
    private final Settlement settlement;
    /** When each beam last saw what may have been a ball, and was none's. */
    private final long[] strayNs;
    private final Ball[] balls = new Ball[MOST];
    private int count;

    Flight(Lay lay, Room room, LaneBelief lane, Strikes strikes, Silence silence) {
        this.lay = lay;
        this.room = room;
        this.lane = lane;
        this.strikes = strikes;
        this.silence = silence;
        sink = silence;
        strayNs = new long[lay.beams];
        Arrays.fill(strayNs, Long.MIN_VALUE);
        claims = new Claims(lay, room, lane);
        verdict = new Verdict(lay, lane);
        settlement = new Settlement(lay, room, lane, verdict);
        for (int i = 0; i < MOST; i++) {
            balls[i] = new Ball(lay);
        }
    }

    /**
     * Takes a pulse of a beam.
     *
     * @param pass   what passed the beam's pair with it
     * @param unsure what that looks like is not to be relied on yet
     */
    void crossing(int beam, long onNs, long offNs, Pass pass, boolean unsure) {
        if (!claims.couldBeABall(beam, onNs, offNs)) {
            stray(beam, onNs, offNs, pass);
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
            stray(beam, onNs, offNs, pass);
            return;
        }
        if (unsure && pass != Pass.NONE) {
            balls[index].suspect();
        }
        if (balls[index].crossings().count() > 1) {
            meetStrike(balls[index]);
        }
        balls[index].due(givenUpNs(balls[index]));
    }

    /** Nobody's crossing, as far as is known; though a ball's that came to rest there may be no more than that. */
    private void stray(int beam, long onNs, long offNs, Pass pass) {
        if (pass == Pass.ODD || pass == Pass.BACKWARD || !claims.isShoe(beam, onNs, offNs)) {
            strayNs[beam] = onNs;
        }
    }

    /** Where a ball's centre is when the first sensor sees it that can be relied on and saw nothing since; NaN if none. */
    double unseenMm(long sinceNs) {
        for (int i = 0; i < lay.beams; i++) {
            int fellow = lay.fellow(i);
            if (room.isUsable(lay.channel[i]) && !room.isHalf(i) && sawNothing(i, sinceNs)
                    && (fellow < 0 || sawNothing(fellow, sinceNs))) {
                return lay.arrivalMm(i);
            }
        }
        return Double.NaN;
    }

    private boolean sawNothing(int beam, long sinceNs) {
        long blockedNs = room.sensor(lay.channel[beam]).blockedSinceNs();
        return strayNs[beam] < sinceNs && (blockedNs == Sensor.NEVER || blockedNs < sinceNs);
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
    boolean drop(long onNs, long nowNs, boolean doubtful) {
        int index = claims.dropping(balls, count, onNs, doubtful ? PROMPT_NS : Sensor.NEVER);
        if (index >= 0) {
            meetStrike(balls[index]);
            strikes.felt(balls[index].hasStrike());
            Attempt attempt = verdict.holed(balls[index], nowNs);
            remove(index);
            sink.attempt(attempt);
        }
        return index >= 0;
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
                boolean untold = attempt != null && (balls[i].isSuspect() || mayHaveDroppedUntold(balls[i], attempt, nowNs));
                if (attempt == null || unfelt && !untold) {
                    strikes.giveBack(balls[i].struckNs());
                    leaveTracks(balls[i].crossings());
                }
                remove(i);
                if (untold) {
                    sink.untold(attempt.timeNs());
                } else if (attempt != null && !unfelt) {
                    sink.attempt(attempt);
                }
                return;
            }
        }
    }

    private void leaveTracks(Crossings crossings) {
        for (int i = 0; i < crossings.count(); i++) {
            strayNs[crossings.beam(i)] = Math.max(strayNs[crossings.beam(i)], crossings.timeNs(crossings.onS(i)));
        }
    }

    /** Whether it came to the hole while the cup could not tell of drops, and was not seen behind it. */
    private boolean mayHaveDroppedUntold(Ball ball, Attempt attempt, long nowNs) {
        if (ball.hasPassedHole() || !claims.mayReachHole(ball) || room.cup < 0) {
            return false;
        }
        return room.cupInDoubt(ball.firstNs(), nowNs) || claims.filled(ball, room.cupBlockedSinceNs())
                || Double.isNaN(attempt.finishMm()) && attempt.rim() && silence.vanished();
    }

    /** A beam turns out to be out of order: what it alone saw was no ball. */
    void forget(int beam) {
        for (int i = count - 1; i >= 0; i--) {
            if (balls[i].crossings().count() == 1 && balls[i].crossings().beam(0) == beam) {
                remove(i);
            }
        }
    }
}
