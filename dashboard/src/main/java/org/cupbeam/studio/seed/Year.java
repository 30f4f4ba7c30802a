package org.cupbeam.studio.seed;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.cupbeam.event.Source;
import org.cupbeam.studio.seed.Diary.Party;
import org.cupbeam.studio.seed.LaneBook.Written;

/** A year of the studio, day by day. Equal arguments give equal years. */
final class Year {
    private static final long LONGEST_WAIT_MS = 30 * 60_000L;
    private static final int RESTARTS_PER_1000_DAYS = 12;
    private static final double SLOWEST_FT = 9.2;

    private final Instant end;
    private final LocalDate last;
    private final RandomGenerator random;
    private final List<Person> people;
    private final Diary diary;
    private final List<LaneBook> lanes = new ArrayList<>();
    private final List<Double> usualFt = new ArrayList<>();
    private LocalDate day;

    Year(Instant end, long seed, Size size) {
        SplittableRandom root = new SplittableRandom(seed);
        this.end = end;
        this.last = end.atZone(Scenario.ZONE).toLocalDate();
        this.day = last.minusYears(1).plusDays(1);
        this.people = new Cast(day, last, Scenario.ZONE, root.split()).of(size);
        this.diary = new Diary(people, Scenario.HOURS, Scenario.ZONE, root.split());
        this.random = root.split();
        for (int i = 0; i < size.lanes(); i++) {
            String journal = "orchard" + Long.toHexString(seed) + "-" + (i + 1);
            lanes.add(new LaneBook(new Source(Scenario.STUDIO, Scenario.lane(i), journal), i % 2 == 0));
            usualFt.add(SLOWEST_FT + 1.5 * random.nextDouble());
        }
    }

    List<Person> people() {
        return people;
    }

    /** Whether there is another day. */
    boolean goesOn() {
        return !day.isAfter(last);
    }

    /** What the lanes wrote on the next day, in the order in which it happened. */
    List<Written> nextDay() {
        List<Party> parties = diary.on(day);
        if (!parties.isEmpty()) {
            openUp(parties.get(0).fromMs());
            playAll(parties);
            lanes.forEach(LaneBook::closes);
        }
        day = day.plusDays(1);
        List<Written> all = new ArrayList<>();
        lanes.forEach(lane -> all.addAll(lane.take()));
        all.sort(Comparator.comparingLong(Written::atMs));
        return all;
    }

    private void openUp(long firstMs) {
        for (int i = 0; i < lanes.size(); i++) {
            long startMs = firstMs - (20 + random.nextInt(40)) * 60_000L;
            boolean clockLate = random.nextInt(1_000) < RESTARTS_PER_1000_DAYS;
            lanes.get(i).starts(startMs, clockLate ? firstMs + (10 + random.nextInt(60)) * 60_000L : startMs);
            lanes.get(i).green(Green.today(usualFt.get(i), random));
        }
    }

    private void playAll(List<Party> parties) {
        long[] freeMs = new long[lanes.size()];
        for (Party each : parties) {
            int lane = lane(freeMs, each.fromMs());
            long from = Math.max(freeMs[lane], each.fromMs());
            if (from - each.fromMs() <= LONGEST_WAIT_MS && each.untilMs() + LONGEST_WAIT_MS < end.toEpochMilli()) {
                freeMs[lane] = new Stay(each, lanes.get(lane), from, random).play();
            }
        }
    }

    /** Any lane that is free, the first ones more often; else the one that will be free first. */
    private int lane(long[] freeMs, long atMs) {
        int soonest = 0;
        for (int i = 0; i < freeMs.length; i++) {
            if (freeMs[i] <= atMs && random.nextInt(5) < 2) {
                return i;
            }
            soonest = Math.max(freeMs[i], atMs) < Math.max(freeMs[soonest], atMs) ? i : soonest;
        }
        return soonest;
    }
}
