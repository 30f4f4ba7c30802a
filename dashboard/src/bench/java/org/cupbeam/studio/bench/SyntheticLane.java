package org.cupbeam.studio.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ScriptedLane;

/**
 * What a lane would publish, made up: events, and the score after each, as large as a run's grows. Not a whole tracker: no
 * journal on disk, no sensors, and nothing is sent again.
 */
final class SyntheticLane {
    /** A message pair: the event, and the score that includes it. */
    record Said(long sequence, byte[] event, byte[] score) {
    }

    private static final int PUTTS_IN_RUN = 40;

    final Topics topics;
    private final ScriptedLane script;
    private final String player;
    private final Random random;
    private final List<Score.PuttMade> putts = new ArrayList<>();
    private String run = "";
    private int runs;
    private int holed;

    SyntheticLane(int number, Random random) {
        topics = new Topics("home", "lane-" + number);
        script = new ScriptedLane("lane-" + number, "journal-" + number);
        player = "Player " + number;
        this.random = random;
    }

    long sequence() {
        return script.sequence();
    }

    /** The next putt, with the end of the run before it and the start of its own where they are due. */
    List<Said> putt() {
        List<Said> said = new ArrayList<>();
        script.passes(2);
        if (putts.size() == PUTTS_IN_RUN) {
            said.add(said(script.ends(run, null, player, holed / 6, putts.size(), holed, 300), null));
        }
        if (runs == 0 || putts.size() == PUTTS_IN_RUN) {
            run = script.source.lane() + "-run-" + ++runs;
            putts.clear();
            holed = 0;
            said.add(said(script.starts(run, null, player, 1), null));
        }
        int station = 1 + putts.size() / 4;
        boolean in = random.nextInt(3) == 0;
        holed += in ? 1 : 0;
        double finishMm = in ? Double.NaN : 150 + random.nextInt(900);
        Event event = in ? script.holes(run, null, player, station)
                : script.misses(run, null, player, station, finishMm);
        Putt putt = ((Data.Attempt) event.data()).putt();
        putts.add(new Score.PuttMade(station, putt.outcome(), putt.finishMm(), putt.overshoot(), putt.how()));
        said.add(said(event, new Score.Last(event.sequence(), player, station, station * 914.4, putt)));
        return said;
    }

    private Said said(Event event, Score.Last last) {
        int station = 1 + Math.max(0, putts.size() - 1) / 4;
        Score.Player now = new Score.Player(player, run, station, station * 914.4, station - 1, putts.size(), holed, 300, 3,
                OptionalInt.empty(), station, null, putts);
        Score score = new Score(topics.studio(), topics.lane(), event.sequence(), Score.State.PLAYING, ScriptedLane.LADDER,
                914.4, ScriptedLane.TAGS, null, null, OptionalInt.of(0), List.of(now), last, ScriptedLane.GREEN,
                List.of(new Score.BeamAt("gate", -300), new Score.BeamAt("far", 600)), event.time());
        return new Said(event.sequence(), ScriptedLane.json(event), ScoreJson.encode(score));
    }
}
