package org.cupbeam.studio.seed;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.random.RandomGenerator;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Move;
import org.cupbeam.drill.Play;
import org.cupbeam.drill.Step;
import org.cupbeam.event.Data.Correction.What;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.seed.Diary.Party;

/** What a party does at a lane, from coming to leaving. */
final class Stay {
    private static final double RIG_LIMIT_MM = 914.4;
    /** As often as people like to play them. */
    private static final List<Drill> DRILLS = List.of("ladder", "ladder", "ladder", "ladder", "mixed-nine", "mixed-nine",
            "one-ball", "one-ball", "lag").stream().map(DrillFile::preset).toList();
    private static final int TAKEN_BACK_PER_1000 = 7;
    private static final int VOIDED_PER_1000 = 2;
    private static final int PASSED_PER_1000 = 2;
    private static final int GIVEN_UP_PER_1000 = 2;
    private static final long PATIENCE_MS = 10 * 60_000;
    private static final List<String> REASONS = List.of("ball was kicked", "somebody walked past", "wrong player", "");

    private final Party party;
    private final LaneBook lane;
    private final RandomGenerator random;
    private final long untilMs;
    private long nowMs;

    /** @param fromMs when the lane is theirs */
    Stay(Party party, LaneBook lane, long fromMs, RandomGenerator random) {
        this.party = party;
        this.lane = lane;
        this.random = random;
        this.nowMs = fromMs;
        this.untilMs = party.untilMs();
    }

    /** Plays until the time is up. @return when the lane is free again, ms since 1970 */
    long play() {
        if (!lane.hasBegun() && random.nextInt(3) == 0) {
            warmUp();
        }
        List<Person> order = new ArrayList<>(party.people());
        while (nowMs < untilMs) {
            passes(30, 90);
            boolean duel = order.size() > 1 && random.nextInt(10) < 6;
            game(duel ? order : order.subList(0, 1));
            Collections.rotate(order, -1);
        }
        return nowMs;
    }

    private void game(List<Person> players) {
        Drill drill = DRILLS.get(random.nextInt(DRILLS.size()));
        Tags tags = tags();
        Play play = Play.begin(drill, players.stream().map(Person::name).toList(), RIG_LIMIT_MM);
        lane.begins(play, tags, nowMs);
        while (!play.standing().over()) {
            boolean enough = nowMs > untilMs + PATIENCE_MS || random.nextInt(1_000) < GIVEN_UP_PER_1000;
            if (enough && play.standing().begun()) {
                play = tell(play.end(), null);
                break;
            }
            play = random.nextInt(1_000) < PASSED_PER_1000 ? tell(play.pass(), null) : putt(play, players, tags);
        }
    }

    private Play putt(Play play, List<Person> players, Tags tags) {
        Person who = players.get(play.standing().turn());
        double stationMm = play.drill().stations().atMm(play.standing().runs().get(play.standing().turn()).station());
        passes(20, 42);
        Putt putt = Roll.of(who.truth().at(Instant.ofEpochMilli(nowMs), tags, stationMm), stationMm,
                lane.green().decelerationMmPerS2(tags), random).seen(lane.full(), play.limitMm(), random);
        Step step = play.after(org.cupbeam.drill.Putt.of(putt.outcome() == Putt.Outcome.HOLED, putt.finishMm(),
                Double.NaN));
        Play after = tell(step, putt);
        Putted putted = (Putted) step.happenings().get(0);
        long of = lane.sequence() - step.happenings().size() + 1;
        if (random.nextInt(1_000) < TAKEN_BACK_PER_1000) {
            passes(3, 8);
            lane.corrects(What.TAKEN_BACK, of, "pedal", null, nowMs);
            return after.takeBack().play();
        }
        if (random.nextInt(1_000) < VOIDED_PER_1000) {
            passes(20, 60);
            String reason = REASONS.get(random.nextInt(REASONS.size()));
            lane.corrects(What.VOIDED, of, Scenario.COACH, reason.isEmpty() ? null : reason, nowMs);
        }
        if (putted.holed() || putted.ballsLeft() == 0) {
            passes(15, 40); // to fetch the balls, and walk to the next place
        }
        return after;
    }

    private Play tell(Step step, Putt puttOrNull) {
        lane.tells(step.happenings(), puttOrNull, nowMs);
        return step.play();
    }

    private void warmUp() {
        Person who = party.people().get(0);
        for (int i = 3 + random.nextInt(6); i > 0; i--) {
            passes(10, 20);
            double fromMm = 1_000 + 2_000 * random.nextDouble();
            lane.warmsUp(Roll.of(who.truth().at(Instant.ofEpochMilli(nowMs)), fromMm,
                    lane.green().decelerationMmPerS2(Tags.NONE), random).seen(lane.full(), RIG_LIMIT_MM, random), nowMs);
        }
    }

    private Tags tags() {
        if (random.nextInt(5) == 0) {
            return Tags.NONE;
        }
        Tags.Break[] breaks = {Tags.Break.LEFT_TO_RIGHT, Tags.Break.RIGHT_TO_LEFT, Tags.Break.STRAIGHT,
            Tags.Break.STRAIGHT};
        Tags.Slope[] slopes = {Tags.Slope.UPHILL, Tags.Slope.DOWNHILL, Tags.Slope.LEVEL, Tags.Slope.LEVEL};
        return new Tags(breaks[random.nextInt(breaks.length)], slopes[random.nextInt(slopes.length)]);
    }

    private void passes(int leastS, int mostS) {
        nowMs += leastS * 1_000L + random.nextInt((mostS - leastS) * 1_000);
    }
}
