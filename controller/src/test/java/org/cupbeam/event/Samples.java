package org.cupbeam.event;

import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Stations;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;

/** One of each message, with and without what may be absent. */
public final class Samples {
    public static final Source SOURCE = new Source("north", "bay-3", "7f3c9a");
    public static final Instant TIME = Instant.parse("2026-11-25T06:00:00.123456789Z");
    public static final Stamp STAMP =
            new Stamp("0b9f1c1e-8f0e-4f0e-9a57-1f4f7b6d2a11", 5_027_900_000L, Stamp.Clock.UNSYNCHRONISED);
    public static final Putt HOLED = new Putt(Putt.Outcome.HOLED, Double.NaN, Double.NaN, Double.NaN, Double.NaN,
            false, 1336.6, 1590.2, false, Putt.How.SENSED);
    public static final Putt MISSED = new Putt(Putt.Outcome.MISSED, 1597.8, 9.1, 1580, 1615.6, true, 1400.1, 1597.8,
            true, Putt.How.SENSED);
    public static final Putt SHORT = new Putt(Putt.Outcome.MISSED, Double.NaN, Double.NaN, Double.NaN, -450, false,
            Double.NaN, Double.NaN, false, Putt.How.ENTERED);
    public static final Tags TAGS = new Tags(Tags.Break.LEFT_TO_RIGHT, Tags.Slope.UPHILL);
    public static final GreenNow GREEN = new GreenNow(10.25, 0.125, Double.NaN);
    public static final Drill LADDER = new Drill("Putter-length ladder", new Stations.Ladder(914.4, 914.4, 10), 6,
            Supply.EVERY_STATION, 1, OptionalDouble.of(914.4), Penalty.NONE, Turns.STATION);
    public static final Drill AT = new Drill("Drei Stationen ⛳", new Stations.Marked(List.of(1200.0, 1800.5, 2400.0)),
            5, Supply.WHOLE_RUN, 2, OptionalDouble.empty(), Penalty.BACK_ONE, Turns.BALL);
    public static final Data.Of ANA = new Data.Of("r-17", "d-4", "Ana", 1);
    public static final Data.Of SOLO = new Data.Of("r-18", null, "Bo", 1);

    private Samples() {
    }

    public static List<Data> data() {
        return List.of(
                new Data.Attempt(STAMP, MISSED, new Play("r-17", "d-4", "Ana", "Ladder", 3, 2743.2, 4, 2, 4), TAGS,
                        GREEN),
                new Data.Attempt(STAMP, HOLED, new Play("r-18", null, "Bo", "Ladder", 1, 914.4, 1, 1, 0), Tags.NONE,
                        GREEN),
                new Data.Attempt(STAMP, SHORT, null, Tags.NONE, GREEN),
                new Data.RunStarted(STAMP, ANA, LADDER, TAGS, 914.4),
                new Data.RunStarted(STAMP, SOLO, AT, new Tags(null, Tags.Slope.LEVEL), 267),
                new Data.RunEnded(STAMP, ANA, 3, 19, 11, 402.7, EndedBy.OUT_OF_BALLS),
                new Data.RunEnded(STAMP, SOLO, 10, 10, 10, Double.NaN, EndedBy.CLEARED_ALL),
                new Data.RunPassed(STAMP, ANA),
                new Data.DuelEnded(STAMP, "d-4", "Ana"),
                new Data.DuelEnded(STAMP, "d-4", null),
                new Data.Correction(STAMP, Data.Correction.What.TAKEN_BACK, 41, "pedal", null),
                new Data.Correction(STAMP, Data.Correction.What.VOIDED, 7, "Jo", "a dog ran through"),
                new Data.Clock(STAMP, TIME));
    }

    public static List<Event> events() {
        List<Data> data = data();
        return IntStream.range(0, data.size())
                .mapToObj(i -> new Event(SOURCE, 42 + i, TIME, data.get(i))).toList();
    }

    public static List<Score> scores() {
        Score idle = new Score("north", "bay-3", 0, Score.State.IDLE, null, 914.4, Tags.NONE, null, null,
                OptionalInt.empty(), List.of(), null, GREEN, List.of(), TIME);
        Score outsideAnyRun = new Score("north", "bay-3", 12, Score.State.IDLE, null, 914.4, Tags.NONE, null, null,
                OptionalInt.empty(), List.of(), new Score.Last(12, null, 0, Double.NaN, SHORT),
                new GreenNow(9.5, 0.2, 1.5, -2.5), List.of(new Score.BeamAt("near", -120.5)), TIME);
        return List.of(idle, outsideAnyRun, score(2, 3));
    }

    /** A duel of so many players with so many putts each. */
    public static Score score(int players, int putts) {
        List<Score.PuttMade> made = Collections.nCopies(putts,
                new Score.PuttMade(10, Putt.Outcome.MISSED, -10_234.5, false, Putt.How.ENTERED));
        List<Score.Player> all = IntStream.range(0, players).mapToObj(i -> new Score.Player("\u4e00".repeat(39) + i,
                "r-" + i, 10, 9144, 9, putts, 0, 10_234.5, 6, OptionalInt.of(6), 10,
                i == 0 ? EndedBy.OUT_OF_BALLS : null, made)).toList();
        return new Score("north", "bay-3", 99, Score.State.PLAYING, LADDER, 914.4, TAGS, "d-4", null,
                OptionalInt.of(1), all, new Score.Last(99, "Ana", 3, 2743.2, MISSED), new GreenNow(10.25, 0.125, -1),
                List.of(new Score.BeamAt("near", -120.5), new Score.BeamAt("far", 980)), TIME);
    }

    public static List<Health> healths() {
        Health.Report report = new Health.Report("7f3c9a", "0.1.0", TIME, Stamp.Clock.SYNCHRONISED, 3, 0,
                List.of(new Health.Sensor("cup", Health.Sensor.Kind.CUP, Health.Sensor.Condition.UNSEEN, Double.NaN, 0),
                        new Health.Sensor("near", Health.Sensor.Kind.BEAM, Health.Sensor.Condition.CHATTERING, 0.4,
                                640.5)),
                List.of("beam near chatters: 640 edges a minute; clean it, or turn it to its lamp"));
        Health.Report tested = new Health.Report("7f3c9a", "0.1.0", TIME, Stamp.Clock.SYNCHRONISED, 0, 0, List.of(),
                List.of(), rolls(2, 3));
        return List.of(new Health(Health.State.ONLINE, 17, STAMP.boot(), report),
                new Health(Health.State.ONLINE, 18, STAMP.boot(), tested),
                new Health(Health.State.OFFLINE, 17, STAMP.boot(), report),
                new Health(Health.State.LOST, 17, STAMP.boot(), null));
    }

    /** A test of the green on a rig of so many beams, with so many rolls. */
    public static Rolls rolls(int beams, int rolls) {
        return new Rolls(581.3, IntStream.range(0, beams).mapToObj(i ->
                new Rolls.Beam("past-" + i, 914.4 + 60 * i, 42.659)).toList(), IntStream.range(0, rolls).mapToObj(i ->
                new Rolls.Roll(i + 1, i % 2 == 0 ? Rolls.Way.TOWARD : Rolls.Way.BACK, IntStream.range(0, beams).mapToObj(at ->
                new Rolls.Crossing(i % 2 == 0 ? at : beams - 1 - at, at * 1_060_123_456L, at * 1_060_123_456L + 42_123_456L))
                .toList())).toList());
    }

    public static List<Command> commands() {
        return List.of(
                new Command("c-1", "Jo", OptionalLong.empty(), new Command.Start(LADDER, List.of("Ana", "Bo"), TAGS)),
                new Command("c-2", "Jo", OptionalLong.of(41), new Command.Start(AT, List.of("Ana"), Tags.NONE)),
                new Command("c-3", "Jo", OptionalLong.of(41), new Command.TakeBack()),
                new Command("c-4", "Jo", OptionalLong.empty(), new Command.Miss(-200.5)),
                new Command("c-5", "Jo", OptionalLong.empty(), new Command.Miss(Double.NaN)),
                new Command("c-6", "Jo", OptionalLong.empty(), new Command.Void(40)),
                new Command("c-7", "Jo", OptionalLong.empty(), new Command.Pass()),
                new Command("c-8", "Jo", OptionalLong.empty(), new Command.End()),
                new Command("c-9", "Jo", OptionalLong.empty(), new Command.TestRolls(true)),
                new Command("c-10", "Jo", OptionalLong.empty(), new Command.TestRolls(false)));
    }

    public static List<Answer> answers() {
        return List.of(new Answer("c-1", true, null, 44),
                new Answer("c-2", false, "the lane is at 44, not 41; look at the score and ask again", 44));
    }
}
