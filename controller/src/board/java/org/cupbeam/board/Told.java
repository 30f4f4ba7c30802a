package org.cupbeam.board;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Play;
import org.cupbeam.event.Data;
import org.cupbeam.lane.Replay;
import org.cupbeam.rig.Rig;

/**
 * An attempt as either side tells it.
 *
 * @param sort     all of it that must be the same: outcome, overshoot, and its place in the drill
 * @param finishMm NaN when holed or not known
 */
record Told(String sort, double finishMm) {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final long SETTLED_NS = 30_000_000_000L;

    static Told of(Data.Attempt attempt) {
        return new Told(sort(attempt.putt().outcome().word(), attempt.putt().overshoot(), attempt.play().station(),
                attempt.play().ball(), attempt.play().ballsLeft()), attempt.putt().finishMm());
    }

    /** What a replay makes of these edges, once all is settled. */
    static List<Told> replay(Rig rig, Drill drill, List<Edge> edges) {
        List<String> lines = new ArrayList<>();
        Replay replay = new Replay(rig, Play.begin(drill, List.of("ann"), rig.limitMm()), lines::add);
        edges.forEach(each -> replay.edge(each.channel(), each.active(), each.timeNs()));
        if (!edges.isEmpty()) {
            replay.advance(edges.get(edges.size() - 1).timeNs() + SETTLED_NS);
        }
        replay.end();
        return lines.stream().map(Told::json).filter(line -> line.has("outcome")).map(Told::of).toList();
    }

    /** Whether these come to the same attempts as those, whatever their finishes. */
    static boolean same(Rig rig, Drill drill, List<Edge> these, List<Edge> those) {
        return replay(rig, drill, these).stream().map(Told::sort).toList()
                .equals(replay(rig, drill, those).stream().map(Told::sort).toList());
    }

    private static Told of(JsonNode line) {
        return new Told(sort(line.get("outcome").asText(), line.get("overshoot").asBoolean(),
                line.get("station").asInt(), line.get("ball").asInt(), line.get("balls_left").asInt()),
                line.get("finish_mm").asDouble(Double.NaN));
    }

    private static String sort(String outcome, boolean overshoot, int station, int ball, int left) {
        return outcome + (overshoot ? " past the limit" : "") + ", station " + station + ", ball " + ball + ", left " + left;
    }

    private static JsonNode json(String line) {
        try {
            return JSON.readTree(line);
        } catch (JsonProcessingException e) {
            throw new AssertionError(line, e);
        }
    }
}
