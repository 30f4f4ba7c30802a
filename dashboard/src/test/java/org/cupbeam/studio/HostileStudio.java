package org.cupbeam.studio;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.Health;
import org.cupbeam.event.Health.Sensor;
import org.cupbeam.event.Score;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Topics;

/** A studio in which whatever people and lanes can put words into holds words that would be a program, were they ever taken for one. */
final class HostileStudio implements AutoCloseable {
    static final String IMAGE = "<img src=x onerror=struck=1>";
    static final String SCRIPT = "\"><script>window.struck=2</script>";
    static final String LINK = "javascript:window.struck=3//";
    static final String DRAWING = "<svg/onload=struck=4><a href=data:,x>";
    /** Turns the direction of what is read after it, and never turns it back. */
    static final String TURNED = "Ada \u202E\u2067<b>x</b>";
    static final String ATTRIBUTE = "' onfocus=struck=6 autofocus x='";
    private static final List<String> NAMES = List.of(IMAGE, SCRIPT, LINK, DRAWING, TURNED, ATTRIBUTE);
    /** All of them, and as much again as fills a text to its end. */
    private static final String ALL = String.join(" ", NAMES) + "</textarea></title></script><iframe srcdoc='" + SCRIPT + "'>";
    private static final int LONGEST_TYPED = 10_000;
    private static final Topics LANE = new Topics("home", "lane-1");

    final Pages pages;

    HostileStudio(Path folder) throws IOException {
        pages = new Pages(folder);
        play();
        keepBooks();
        pages.lanes.score(LANE, score());
        pages.lanes.health(LANE, health());
    }

    private static Drill drill() {
        Drill ladder = ScriptedLane.LADDER;
        return new Drill(DRAWING + IMAGE, ladder.stations(), ladder.balls(), ladder.supply(), ladder.holed(), ladder.limitMm(),
                ladder.penalty(), ladder.turns());
    }

    /** Duels of each with the next, at a lane and with a drill; a putt struck from the record by somebody for a reason. */
    private void play() {
        ScriptedLane lane = new ScriptedLane("lane-1", "j1").plays(drill());
        for (int i = 0; i < NAMES.size(); i++) {
            String duel = "d" + i;
            String one = NAMES.get(i);
            String other = NAMES.get((i + 1) % NAMES.size());
            pages.keep(lane.starts("r" + i + "a", duel, one, 1), lane.starts("r" + i + "b", duel, other, 2),
                    lane.passes(9).holes("r" + i + "a", duel, one, 1), lane.passes(9).misses("r" + i + "b", duel, other, 1, 417),
                    lane.passes(9).misses("r" + i + "a", duel, one, 2, 1_300));
            pages.keep(lane.voids(lane.sequence(), cut(ATTRIBUTE, 40), cut(ALL, 300)),
                    lane.ends("r" + i + "a", duel, one, 1, 2, 1, 1_300), lane.ends("r" + i + "b", duel, other, 0, 1, 0, 417),
                    lane.endsDuel(duel, one));
        }
    }

    private void keepBooks() {
        for (JsonNode player : pages.get("/api/players").get("rows")) {
            int id = player.get("id").asInt();
            pages.done("PUT", "/api/player/" + id, json("remark", cut(ALL, 400)));
            pages.done("POST", "/api/player/" + id + "/notes", json("words", cut(ALL + "\n" + "W".repeat(LONGEST_TYPED), 4_000)));
        }
        JsonNode run = pages.get("/api/run/1");
        int attempt = run.at("/putts/0/id").asInt();
        pages.done("POST", "/api/run/1/notes", json("words", ALL));
        pages.done("POST", "/api/attempt/" + attempt + "/notes", json("words", ALL));
        pages.done("POST", "/api/attempt/" + attempt + "/void", json("reason", cut(ALL, 400)));
        JsonNode read = pages.done("POST", "/api/drill-text/read", json("text", DrillFile.text(drill())));
        pages.done("POST", "/api/drills", "{\"drill\": " + read.get("drill") + "}");
        pages.done("POST", "/api/leagues", "{\"drill\": " + read.get("drill") + ", \"first\": \"2026-11-18\", \"last\": \"2026-11-29\", "
                + json("name", IMAGE).substring(1));
    }

    private static Score score() {
        List<Score.PuttMade> putts = List.of(new Score.PuttMade(1, Scenes.PAST.outcome(), Scenes.PAST.finishMm(), true, Scenes.PAST.how()));
        List<Score.Player> players = NAMES.stream().map(name -> new Score.Player(name, "r1", 1, 914.4, 0, 1, 0, 1_300, 3,
                OptionalInt.empty(), 1, null, putts)).toList();
        return new Score("home", "lane-1", 99, Score.State.PLAYING, drill(), 914.4, ScriptedLane.TAGS, "d9", null, OptionalInt.of(0),
                players, new Score.Last(99, DRAWING, 1, 914.4, Scenes.PAST), ScriptedLane.GREEN,
                List.of(new Score.BeamAt(IMAGE, -310), new Score.BeamAt(SCRIPT, 990)), Scenes.NOW);
    }

    private static Health health() {
        List<Sensor> sensors = List.of(new Sensor(IMAGE, Sensor.Kind.BEAM, Sensor.Condition.STUCK, 3, 2),
                new Sensor(SCRIPT, Sensor.Kind.BEAM, Sensor.Condition.CLEAR, 3, 2));
        return new Health(Health.State.ONLINE, 1, "boot-1", new Health.Report("j1", cut(ALL, 200), Scenes.NOW, Stamp.Clock.SYNCHRONISED, 0, 0,
                sensors, List.of(cut(ALL, 200), "beam " + IMAGE + " is blocked")));
    }

    private static String cut(String text, int longest) {
        return text.substring(0, Math.min(text.length(), longest)).strip();
    }

    private static String json(String key, String value) {
        return new ObjectMapper().valueToTree(Map.of(key, value)).toString();
    }

    @Override
    public void close() {
        pages.close();
    }
}
