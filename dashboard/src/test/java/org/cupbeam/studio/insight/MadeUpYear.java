package org.cupbeam.studio.insight;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.cupbeam.event.Data;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.insight.shot.Break;
import org.cupbeam.studio.insight.shot.Lie;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.seed.Scenario;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.cupbeam.studio.seed.Truth;

/** The year that the product makes up for its demo, player by player, as insight takes it: a day is a session. */
final class MadeUpYear implements EventLog {
    private final List<Arrival> attempts = new ArrayList<>();
    private final Set<String> undone = new HashSet<>();
    private final Map<String, List<Shot>> shots = new LinkedHashMap<>();
    private final List<Truth> truths;

    MadeUpYear(long seed, Size size) {
        truths = Seed.fill(this, Instant.parse("2026-11-25T12:00:00Z"), seed, size).players();
        for (Arrival arrival : attempts) {
            Data.Attempt attempt = (Data.Attempt) arrival.event().data();
            if (attempt.play() != null && !undone.contains(arrival.source() + "/" + arrival.sequence())) {
                shots.computeIfAbsent(attempt.play().player(), key -> new ArrayList<>())
                        .add(shot(attempt, arrival.received()));
            }
        }
    }

    List<Truth> truths() {
        return truths;
    }

    /** In order of time; none for who never putted in a run. */
    List<Shot> of(Truth truth) {
        return shots.getOrDefault(truth.player(), List.of());
    }

    @Override
    public List<Kept> kept() {
        return List.of();
    }

    @Override
    public void commit(Batch batch) {
        for (Arrival arrival : batch.arrivals()) {
            if (arrival.event().data() instanceof Data.Attempt) {
                attempts.add(arrival);
            } else if (arrival.event().data() instanceof Data.Correction correction) {
                undone.add(arrival.source() + "/" + correction.of());
            }
        }
    }

    private static Shot shot(Data.Attempt attempt, Instant at) {
        Putt putt = attempt.putt();
        boolean holed = putt.outcome() == Putt.Outcome.HOLED;
        LocalDate day = at.atZone(Scenario.ZONE).toLocalDate();
        double below = holed || !Double.isNaN(putt.finishMm()) ? Double.NaN : putt.highMm();
        return new Shot(day.toEpochDay(), at.toEpochMilli(), attempt.play().stationMm(), holed, putt.finishMm(), below,
                putt.paceMm(), putt.speedAtHoleMmPerS(), putt.rim(), breaks(attempt.tags()), lie(attempt.tags()),
                attempt.green().stimpFt(), attempt.green().stimpSdFt());
    }

    private static Break breaks(Tags tags) {
        return tags.breaks() == null ? Break.UNKNOWN : Break.valueOf(tags.breaks().name());
    }

    private static Lie lie(Tags tags) {
        return tags.slope() == null ? Lie.UNKNOWN : Lie.valueOf(tags.slope().name());
    }
}
