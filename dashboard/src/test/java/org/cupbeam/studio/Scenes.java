package org.cupbeam.studio;

import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Health;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Score;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Tags;

/** Moments of play, as a lane would tell of them. */
public final class Scenes {
    public static final Instant NOW = Instant.parse("2026-11-25T18:04:05Z");
    public static final Putt HOLED = new Putt(Putt.Outcome.HOLED, Double.NaN, Double.NaN, Double.NaN, Double.NaN, false,
            812.5, 402.3, false, Putt.How.SENSED);
    public static final Putt MISSED = new Putt(Putt.Outcome.MISSED, 417.3, 8.9, 399.9, 434.7, false, 912.5, 417.3, true,
            Putt.How.SENSED);
    public static final Putt PAST = new Putt(Putt.Outcome.MISSED, 1313.2, 18, 1278, 1349, true, 1500, 1313.2, false,
            Putt.How.SENSED);
    public static final Putt UNSEEN = new Putt(Putt.Outcome.MISSED, Double.NaN, Double.NaN, Double.NaN, -120, false,
            Double.NaN, Double.NaN, false, Putt.How.ENTERED);

    private Scenes() {
    }

    public static Score free(Putt last) {
        return new Score("home", "lane-1", 7, Score.State.IDLE, null, 914.4, Tags.NONE, null, null, OptionalInt.empty(),
                List.of(), new Score.Last(7, null, 0, Double.NaN, last), ScriptedLane.GREEN, beams(), NOW);
    }

    /** On a green whose rig file tells a slope across the line, too. */
    public static Score sloping(double sidePercent) {
        return new Score("home", "lane-1", 7, Score.State.IDLE, null, 914.4, Tags.NONE, null, null, OptionalInt.empty(),
                List.of(), new Score.Last(7, null, 0, Double.NaN, HOLED), new GreenNow(9.4, 0.2, 0.5, sidePercent), beams(), NOW);
    }

    public static Score alone(String player, long sequence, Putt last) {
        Score.Player ada = new Score.Player(player, "r1", 3, 2743.2, 2, 5, 2, 699.1, 3, OptionalInt.empty(), 3, null,
                List.of(made(1, MISSED), made(1, HOLED), made(2, HOLED), made(3, PAST), made(3, MISSED)));
        return new Score("home", "lane-1", sequence, Score.State.PLAYING, ScriptedLane.LADDER, 914.4, ScriptedLane.TAGS,
                null, null, OptionalInt.of(0), List.of(ada), new Score.Last(sequence, player, 3, 2743.2, last),
                ScriptedLane.GREEN, beams(), NOW);
    }

    public static Score duel(boolean over) {
        EndedBy end = over ? EndedBy.OUT_OF_BALLS : null;
        Score.Player ada = new Score.Player("Ada", "r1", 3, 2743.2, 2, 5, 2, 699.1, over ? 0 : 3, OptionalInt.empty(), 3,
                end, List.of(made(1, MISSED), made(1, HOLED), made(2, HOLED), made(3, PAST), made(3, MISSED)));
        Score.Player bo = new Score.Player("Bo", "r2", 3, 2743.2, 2, 7, 2, 380, over ? 0 : 4, OptionalInt.empty(), 3, end,
                List.of(made(1, HOLED), made(2, MISSED), made(2, MISSED), made(2, MISSED), made(2, HOLED),
                        made(3, MISSED), made(3, UNSEEN)));
        return new Score("home", "lane-1", 20, over ? Score.State.OVER : Score.State.PLAYING, ScriptedLane.LADDER, 914.4,
                ScriptedLane.TAGS, "d1", over ? "Ada" : null, over ? OptionalInt.empty() : OptionalInt.of(1),
                List.of(ada, bo), new Score.Last(20, "Bo", 3, 2743.2, UNSEEN), ScriptedLane.GREEN, beams(), NOW);
    }

    /** As many players and putts as a score holds. */
    public static Score crowd(long sequence) {
        List<Score.PuttMade> putts = Collections.nCopies(Score.MAX_PUTTS, made(3, PAST));
        List<Score.Player> players = IntStream.range(0, Score.MAX_PLAYERS).mapToObj(i -> new Score.Player("Player " + i,
                "r" + i, 3, 2743.2, 2, 70, 2, 699.1, 3, OptionalInt.empty(), 3, null, putts)).toList();
        return new Score("home", "lane-1", sequence, Score.State.PLAYING, ScriptedLane.LADDER, 914.4, ScriptedLane.TAGS,
                "d1", null, OptionalInt.of(0), players, new Score.Last(sequence, "Player 1", 3, 2743.2, PAST),
                ScriptedLane.GREEN, beams(), NOW);
    }

    public static Health online(long connection, String journal, String... faults) {
        return new Health(Health.State.ONLINE, connection, "boot-1", new Health.Report(journal, "0.1.0", NOW,
                Stamp.Clock.SYNCHRONISED, 0, 0, List.of(new Health.Sensor("cup", Health.Sensor.Kind.CUP,
                Health.Sensor.Condition.CLEAR, 4.2, 2)), List.of(faults)));
    }

    public static Health lost(long connection) {
        return new Health(Health.State.LOST, connection, "boot-1", null);
    }

    private static List<Score.BeamAt> beams() {
        return List.of(new Score.BeamAt("near-1", -310), new Score.BeamAt("far-1", 990), new Score.BeamAt("far-2", 1050));
    }

    private static Score.PuttMade made(int station, Putt putt) {
        return new Score.PuttMade(station, putt.outcome(), putt.finishMm(), putt.overshoot(), putt.how());
    }
}
