package org.cupbeam.studio.store;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashSet;
import java.util.Set;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.Data;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.store.sums.PuttSums;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Rows that come in numbers, gathered and written together. */
final class Rows {
    private static final String EVENT = """
            INSERT INTO event (journal_id, sequence, type, boot_id, monotonic_ns, synchronised, at_ms, received_ms,
                envelope, problem, check_sum)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
            """;
    private static final String ATTEMPT = """
            INSERT INTO attempt (id, journal_id, sequence, lane_id, at_ms, run_id, player_id, drill_id, station,
                station_mm, visit, ball, balls_left, holed, finish_mm, finish_sd_mm, finish_low_mm, finish_high_mm,
                overshoot, speed_at_hole_mm_s, pace_mm, rim, entered, breaks, slope, stimp_ft, stimp_sd_ft)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
            """;

    private final Handle handle;
    private final PreparedBatch events;
    private final PreparedBatch attempts;
    private final Set<Integer> players = new LinkedHashSet<>();
    private final PuttSums sums = new PuttSums();

    Rows(Handle handle) {
        this.handle = handle;
        events = handle.prepareBatch(EVENT);
        attempts = handle.prepareBatch(ATTEMPT);
    }

    void event(int journal, Arrival arrival, Boots.When when) {
        Data data = arrival.event() == null ? null : arrival.event().data();
        String envelope = new String(arrival.payload(), StandardCharsets.UTF_8);
        events.add(journal, arrival.sequence(), data == null ? null : data.type(), when == null ? null : when.boot(),
                data == null ? null : data.stamp().monotonicNs(), when == null ? 0 : when.synchronised(),
                when == null ? arrival.time().toEpochMilli() : when.atMs(), arrival.received().toEpochMilli(),
                envelope, arrival.problem(), CheckSum.of(envelope));
    }

    /** @param run null outside any run */
    void attempt(int id, int journal, long sequence, int lane, long atMs, Data.Attempt attempt, Plays.Run run) {
        Putt putt = attempt.putt();
        Tags tags = attempt.tags();
        boolean inRun = run != null;
        if (inRun) {
            players.add(run.player());
            sums.add(lane, run.player(), atMs, attempt.play().stationMm(), putt.outcome() == Putt.Outcome.HOLED);
        }
        attempts.add(id, journal, sequence, lane, atMs, inRun ? run.id() : null, inRun ? run.player() : null,
                inRun ? run.drill() : null, inRun ? attempt.play().station() : null,
                inRun ? orNull(attempt.play().stationMm()) : null, inRun ? attempt.play().visit() : null,
                inRun ? attempt.play().ball() : null, inRun ? attempt.play().ballsLeft() : null,
                flag(putt.outcome() == Putt.Outcome.HOLED), orNull(putt.finishMm()), orNull(putt.finishSdMm()),
                orNull(putt.lowMm()), orNull(putt.highMm()), flag(putt.overshoot()), orNull(putt.speedAtHoleMmPerS()),
                orNull(putt.paceMm()), flag(putt.rim()), flag(putt.how() == Putt.How.ENTERED), word(tags.breaks()),
                word(tags.slope()), orNull(attempt.green().stimpFt()), orNull(attempt.green().stimpSdFt()));
    }

    /** Writes what has gathered, so that statements that follow see it; attempts as ones that count. */
    void write() {
        if (events.size() > 0) {
            events.execute();
        }
        if (attempts.size() > 0) {
            attempts.execute();
        }
        sums.write(handle);
        players.forEach(player -> PuttsVersion.changed(handle, player));
        players.clear();
    }

    static Double orNull(double value) {
        return Double.isNaN(value) ? null : value;
    }

    static String word(Worded constantOrNull) {
        return constantOrNull == null ? null : constantOrNull.word();
    }

    private static int flag(boolean value) {
        return value ? 1 : 0;
    }
}
