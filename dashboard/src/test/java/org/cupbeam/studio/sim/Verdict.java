package org.cupbeam.studio.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.LongStream;
import org.cupbeam.drill.Run;
import org.cupbeam.drill.Standing;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Score;

/** Holds what the host has in the end to what the lane has, and both to what truly happened. */
final class Verdict {
    private final LaneMachine lane;
    private final HostMachine host;
    private final Truth truth;

    Verdict(LaneMachine lane, HostMachine host, Truth truth) {
        this.lane = lane;
        this.host = host;
        this.truth = truth;
    }

    void hold() {
        eachEventOnceInOrder();
        attempts();
        score(lane.score());
        score(host.shown(lane.topics).orElseThrow());
        times();
        assertThat(host.look().troubles()).as("what 'store check' finds").isEmpty();
    }

    private List<Map<String, Object>> rows(String sql) {
        return host.store().read(h -> h.select(sql, lane.name).mapToMap().list());
    }

    private void eachEventOnceInOrder() {
        List<Event> written = lane.lane().events();
        List<Map<String, Object>> kept = rows("SELECT e.sequence, e.envelope, e.problem FROM event e "
                + "JOIN journal j ON j.id = e.journal_id JOIN lane l ON l.id = j.lane_id WHERE l.name = ? "
                + "ORDER BY e.sequence");
        assertThat(kept).as("events kept, and events written").hasSameSizeAs(written);
        for (int i = 0; i < kept.size(); i++) {
            assertThat(number(kept.get(i).get("sequence"))).isEqualTo(i + 1);
            assertThat(kept.get(i).get("envelope")).as("event %d", i + 1)
                    .isEqualTo(new String(EventJson.encode(written.get(i)), StandardCharsets.UTF_8));
            assertThat(kept.get(i).get("problem")).isNull();
        }
        assertThat(rows("SELECT ? AS lane, m.* FROM missing m")).as("given up").isEmpty();
        assertThat(rows("SELECT ? AS lane, d.reason FROM dead_letter d")).as("not understood").isEmpty();
    }

    private void attempts() {
        List<Map<String, Object>> kept = rows("SELECT a.*, p.name AS player FROM attempt a "
                + "JOIN lane l ON l.id = a.lane_id LEFT JOIN player p ON p.id = a.player_id WHERE l.name = ? "
                + "ORDER BY a.sequence");
        List<String> stored = new ArrayList<>();
        kept.forEach(row -> stored.add(words(row.get("holed"), row.get("finish_mm"), row.get("overshoot"),
                row.get("entered"), row.get("counts"), row.get("player"), row.get("station"), row.get("visit"),
                row.get("ball"), row.get("balls_left"))));
        assertThat(stored).as("attempts of %s kept, and made", lane.name)
                .isEqualTo(truth.attempts().stream().map(Verdict::words).toList());
        long counting = truth.attempts().stream().filter(Truth.Made::counts).count();
        assertThat(number(rows("SELECT coalesce(sum(putts), 0) AS n FROM lane_quarter q JOIN lane l ON l.id = q.lane_id "
                + "WHERE l.name = ?").get(0).get("n"))).as("attempts counted by the quarter").isEqualTo(counting);
    }

    private static String words(Truth.Made made) {
        boolean played = made.putted() != null;
        return words(made.holed() ? 1 : 0, Double.isNaN(made.finishMm()) ? null : made.finishMm(),
                made.overshot() ? 1 : 0, made.holed() ? 0 : 1, made.counts() ? 1 : 0,
                played ? made.putted().player() : null, played ? made.putted().station() : null,
                played ? made.putted().visit() : null, played ? made.putted().ball() : null,
                played ? made.putted().ballsLeft() : null);
    }

    private static String words(Object... of) {
        return Arrays.toString(of);
    }

    private void score(Score score) {
        Truth.Made last = truth.last();
        assertThat(score.last() == null).as("no last putt").isEqualTo(last == null);
        if (last != null) {
            assertThat(score.last().putt().outcome() == Putt.Outcome.HOLED).isEqualTo(last.holed());
            assertThat(Double.valueOf(score.last().putt().finishMm())).isEqualTo(Double.valueOf(last.finishMm()));
        }
        if (truth.play() == null) {
            assertThat(score.state()).isEqualTo(Score.State.IDLE);
            return;
        }
        Standing standing = truth.play().standing();
        assertThat(score.state()).isEqualTo(standing.over() ? Score.State.OVER : Score.State.PLAYING);
        assertThat(score.turn()).isEqualTo(standing.over() ? OptionalInt.empty() : OptionalInt.of(standing.turn()));
        OptionalInt winner = standing.over() ? standing.winner() : OptionalInt.empty();
        assertThat(score.winner())
                .isEqualTo(winner.isPresent() ? truth.play().players().get(winner.getAsInt()) : null);
        assertThat(score.players()).extracting(Score.Player::player).isEqualTo(truth.play().players());
        for (int i = 0; i < score.players().size(); i++) {
            Score.Player is = score.players().get(i);
            Run run = standing.runs().get(i);
            assertThat(List.of(is.station(), is.stationsCleared(), is.attempts(), is.holed(), is.ballsLeft(), is.visit(),
                    String.valueOf(is.endedBy()))).as("%s's run", is.player()).isEqualTo(List.of(run.station(),
                    run.cleared(), run.tally().attempts(), run.tally().holed(), run.visit().left(),
                    run.visit().number(), String.valueOf(run.endedBy().orElse(null))));
        }
    }

    /** Moments are what they were, by a clock that nothing upsets; and times of day are right where they can be. */
    private void times() {
        for (Map<String, Object> row : rows("SELECT e.at_ms, e.monotonic_ns, e.synchronised, b.name AS boot, "
                + "coalesce(a.at_ms, c.at_ms, e.at_ms) AS shown_ms FROM event e JOIN boot b ON b.id = e.boot_id "
                + "JOIN journal j ON j.id = e.journal_id JOIN lane l ON l.id = j.lane_id "
                + "LEFT JOIN attempt a ON a.journal_id = e.journal_id AND a.sequence = e.sequence "
                + "LEFT JOIN correction c ON c.journal_id = e.journal_id AND c.sequence = e.sequence "
                + "WHERE l.name = ? ORDER BY e.sequence")) {
            String boot = (String) row.get("boot");
            assertThat(row.get("shown_ms")).as("what pages show").isEqualTo(row.get("at_ms"));
            if (lane.clock.isBelieved() && boot.equals(lane.clock.boot())) {
                assertThat(number(row.get("synchronised"))).as("event of %s set right, %s", boot, lane.clock).isPositive();
            }
            if (number(row.get("synchronised")) > 0 && !lane.clock.lied()) {
                long trueMs = lane.clock.truthAt(boot, number(row.get("monotonic_ns"))).toEpochMilli();
                assertThat(LongStream.of(number(row.get("at_ms")) - trueMs).map(Math::abs).sum())
                        .as("ms off the true time").isLessThanOrEqualTo(2);
            }
        }
    }

    private static long number(Object value) {
        return ((Number) value).longValue();
    }
}
