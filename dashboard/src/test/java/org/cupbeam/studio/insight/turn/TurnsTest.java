package org.cupbeam.studio.insight.turn;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntFunction;
import org.cupbeam.studio.insight.make.MakeCurve;
import org.cupbeam.studio.insight.make.StrokeFit;
import org.cupbeam.studio.insight.make.Tallies;
import org.cupbeam.studio.insight.shot.Golfer;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.junit.jupiter.api.Test;

class TurnsTest {
    private static final long DAY_MS = 86_400_000;
    private static final int SESSIONS = 100;
    private static final int PUTTS = 60;

    @Test
    void aTurnInDirectionIsFoundDatedAndSaid() {
        Turns found = turns(session -> new Golfer(session < 50 ? 1.6 : 1.15, 280, 0.09, 0.01), 1, true);
        assertThat(found.turns()).hasSize(1);
        Turn turn = found.turns().get(0);
        assertThat(turn.session()).isBetween(44, 56);
        assertThat(turn.better()).isTrue();
        assertThat(turn.changed()).containsExactly(Part.DIRECTION);
        assertThat(turn.bayes()).isGreaterThan(0.5);
        assertThat(turn.after().value()).isGreaterThan(turn.before().value() + 0.05);
        assertThat(turn.inWords(ZoneOffset.UTC)).matches("Since \\d+ \\w+ 1970 you putt better: of the same putts \\d\\d in 100 "
                + "drop, where it was \\d\\d\\. Direction has become truer\\.");
        assertThat(found.inWords()).isEqualTo("1 turning point in 6000 putts.");
    }

    @Test
    void aTurnInPaceIsToldFromOneInDirection() {
        Turns found = turns(session -> new Golfer(1.4, 280, session < 60 ? 0.07 : 0.12, 0.01), 2, true);
        assertThat(found.turns()).hasSize(1);
        assertThat(found.turns().get(0).changed()).containsExactly(Part.PACE);
        assertThat(found.turns().get(0).better()).isFalse();
        assertThat(found.turns().get(0).inWords(ZoneOffset.UTC)).endsWith("Pace has become less steady.");
    }

    @Test
    void fromMakesAloneATurnIsFoundButNotWhatChanged() {
        Turns found = turns(session -> new Golfer(session < 50 ? 1.2 : 1.8, 280, 0.09, 0.01), 3, false);
        assertThat(found.turns()).hasSize(1);
        assertThat(found.turns().get(0).better()).isFalse();
        assertThat(found.turns().get(0).inWords(ZoneOffset.UTC)).endsWith("was not measured.");
    }

    @Test
    void fewPuttsSayThatItIsTooEarly() {
        Turns found = turns(sessions(session -> Golfer.club(), 4, 5), true);
        assertThat(found.turns()).isEmpty();
        assertThat(found.inWords()).isEqualTo("Too early to tell of a turn: about 200 more putts.");
    }

    /** The stated rate: one false turn in 100,000 putts. Good days and bad ones are no turns. */
    @Test
    void playersWhoDoNotChangeAreGivenHardlyAnyTurn() {
        int players = 100;
        int[] turns = new int[2];
        int alarms = 0;
        int surely = 0;
        for (int player = 0; player < players; player++) {
            Random days = new Random(5000 + player);
            double degrees = 1.4 * Math.exp(0.3 * days.nextGaussian());
            double pace = 0.09 * Math.exp(0.25 * days.nextGaussian());
            Sessions sessions = sessions(session -> new Golfer(degrees * Math.exp(0.06 * days.nextGaussian()), 280,
                    pace * Math.exp(0.06 * days.nextGaussian()), 0.01), 6000 + player, SESSIONS);
            Turns measured = turns(sessions, true);
            turns[0] += measured.turns().size();
            surely += sure(measured, 0) < SESSIONS ? 1 : 0;
            alarms += measured.charts().stream().mapToInt(chart -> chart.alarms().size()).sum();
            turns[1] += turns(sessions, false).turns().size();
        }
        double putts = (double) players * SESSIONS * PUTTS;
        System.out.printf("%d players without a turn, %.0f putts, seeds 5000 and 6000 on: %d false turns where measured, "
                + "%d from makes alone; stated %.1f%n", players, putts, turns[0], turns[1], putts / Turns.PUTTS_TO_FALSE_TURN);
        double statedAlarms = putts / Turns.PUTTS_TO_FALSE_ALARM;
        System.out.printf("  alarms of the charts: %d; stated %.1f; the Bayesian view is sure of a turn at some time with %d "
                + "players%n", alarms, statedAlarms, surely);
        assertThat((double) alarms).isLessThanOrEqualTo(statedAlarms + 2.5 * Math.sqrt(statedAlarms));
        assertThat(surely).isLessThanOrEqualTo(players / 5);
        double most = putts / Turns.PUTTS_TO_FALSE_TURN + 2 * Math.sqrt(putts / Turns.PUTTS_TO_FALSE_TURN);
        assertThat((double) turns[0]).isLessThanOrEqualTo(most);
        assertThat((double) turns[1]).isLessThanOrEqualTo(most);
    }

    /** How long a turn takes to be noticed, and how far off it is dated. */
    @Test
    void turnsAreNoticedWithinAFewSessions() {
        String[] names = {"direction 1.25 times better", "direction 1.4 times worse", "pace 1.4 times worse", "pace 1.6 times better"};
        double[][] factors = {{1 / 1.25, 1}, {1.4, 1}, {1, 1.4}, {1, 1 / 1.6}};
        for (int kind = 0; kind < names.length; kind++) {
            int which = kind;
            List<Integer> delays = new ArrayList<>();
            List<Integer> offs = new ArrayList<>();
            List<Integer> sure = new ArrayList<>();
            int players = 25;
            for (int player = 0; player < players; player++) {
                Turns found = turns(session -> new Golfer(1.4 * (session < 50 ? 1 : factors[which][0]), 280,
                        0.09 * (session < 50 ? 1 : factors[which][1]), 0.01), 8000 + player, true);
                sure.add(sure(found, 50) - 50);
                found.turns().stream().filter(turn -> Math.abs(turn.session() - 50) <= 8).findFirst().ifPresent(turn -> {
                    delays.add(turn.noticed() - 50);
                    offs.add(Math.abs(turn.session() - 50));
                });
            }
            delays.sort(null);
            offs.sort(null);
            sure.sort(null);
            System.out.printf("%s, 60 putts a session, seeds 8000 on: noticed %d of %d, after %d sessions (median), dated %d off; "
                            + "the Bayesian view is sure after %d%n",
                    names[kind], delays.size(), players, delays.isEmpty() ? -1 : delays.get(delays.size() / 2),
                    offs.isEmpty() ? -1 : offs.get(offs.size() / 2), sure.get(sure.size() / 2));
            assertThat(delays.size()).isGreaterThanOrEqualTo(players * 7 / 10);
            assertThat(delays.get(delays.size() / 2)).isLessThanOrEqualTo(20);
        }
    }

    /** The first session, from this one on, after which the Bayesian view was sure of a turn within the last few. */
    private static int sure(Turns turns, int from) {
        int session = from;
        while (session < SESSIONS && turns.stretches().lately()[session] < 0.95) {
            session++;
        }
        return session;
    }

    private static Turns turns(IntFunction<Golfer> golfer, long seed, boolean measured) {
        return turns(sessions(golfer, seed, SESSIONS), measured);
    }

    private static Turns turns(Sessions sessions, boolean measured) {
        Tallies tallies = Tallies.of(sessions);
        MakeCurve curve = tallies.makesAlone().curve();
        List<Series> series = new ArrayList<>(List.of(SeriesBuilder.makes(sessions, shot -> curve.at(shot.distanceMm()))));
        if (measured) {
            StrokeFit stroke = tallies.stroke();
            series.add(SeriesBuilder.direction(sessions, stroke));
            series.add(SeriesBuilder.pace(sessions, stroke.pace()));
        }
        return Turns.of(sessions, series);
    }

    private static Sessions sessions(IntFunction<Golfer> golfer, long seed, int count) {
        Random random = new Random(seed);
        List<Shot> shots = new ArrayList<>();
        for (int session = 0; session < count; session++) {
            Golfer today = golfer.apply(session);
            for (int putt = 0; putt < PUTTS; putt++) {
                shots.add(today.putt(random, session, session * 3 * DAY_MS + putt * 30_000L, 914.4 * (1 + putt % 8)));
            }
        }
        return Sessions.of(shots);
    }
}
