package org.cupbeam.studio.insight;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.turn.Part;
import org.cupbeam.studio.insight.turn.Turn;
import org.cupbeam.studio.insight.turn.Turns;
import org.cupbeam.studio.insight.weak.Trait;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.seed.Scenario;
import org.cupbeam.studio.seed.Size;
import org.cupbeam.studio.seed.Stroke;
import org.cupbeam.studio.seed.Truth;
import org.cupbeam.studio.seed.Weakness;
import org.junit.jupiter.api.Test;

/**
 * Insight held against the truth about a made-up studio, whose year another room makes up without knowing of insight: what
 * is planted is found, and nothing is claimed of players in whom nothing is, at the stated rates.
 */
class MadeUpYearTest {
    private static final long SEED = 2026;
    private static final Size SIZE = new Size(6, 48, 24, 24);
    private static final int NEAR_SESSIONS = 6;
    private static final Map<Weakness, Trait> TRAITS = new EnumMap<>(Map.of(Weakness.LEFT_TO_RIGHT, Trait.LEFT_TO_RIGHT,
            Weakness.RIGHT_TO_LEFT, Trait.RIGHT_TO_LEFT, Weakness.UPHILL, Trait.UPHILL, Weakness.DOWNHILL, Trait.DOWNHILL,
            Weakness.SHORT_PUTTS, Trait.SHORT, Weakness.LONG_PUTTS, Trait.LONG));

    private int turnsPlanted;
    private int turnsFound;
    private int partsRight;
    private int sessionsOff;
    private int weakPlanted;
    private int weakFound;
    private int plainPlayers;
    private int plainToldWeak;
    private int steadyPutts;
    private int falseTurns;
    private int drifting;
    private int driftsNoticed;
    private int skills;
    private int skillsHeld;

    @Test
    void whatIsPlantedIsFoundAndNothingElseIsClaimed() {
        MadeUpYear year = new MadeUpYear(SEED, SIZE);
        Question question = Question.about(DrillFile.preset("ladder"), 914.4, Units.METRIC, Scenario.ZONE);
        for (Truth truth : year.truths()) {
            List<Shot> shots = year.of(truth);
            if (!shots.isEmpty()) {
                score(truth, Insight.of(shots, question));
            }
        }
        System.out.printf("a made-up year, seed %d, %d players:%n  turning points: %d of %d found, %d with what changed, on "
                        + "average %.1f sessions off%n  weaknesses: %d of %d found%n  drifts: %d of %d noticed%n"
                        + "  of %d players with nothing planted %d were told of a weakness; stated 1 in 20%n"
                        + "  %d false turns in %d putts of players who never turn; stated %.1f%n"
                        + "  95 %% intervals of direction and pace: %d of %d hold the truth%n", SEED, year.truths().size(),
                turnsFound, turnsPlanted, partsRight, (double) sessionsOff / Math.max(1, turnsFound), weakFound, weakPlanted,
                driftsNoticed, drifting, plainPlayers, plainToldWeak, falseTurns, steadyPutts,
                steadyPutts / Turns.PUTTS_TO_FALSE_TURN, skillsHeld, skills);

        assertThat(turnsFound).isGreaterThanOrEqualTo(turnsPlanted * 9 / 10);
        assertThat(partsRight).isGreaterThanOrEqualTo(turnsPlanted * 7 / 10);
        assertThat(weakFound).isGreaterThanOrEqualTo(weakPlanted * 9 / 10);
        assertThat((double) plainToldWeak).isLessThanOrEqualTo(plainPlayers / 20.0 + 2 * Math.sqrt(plainPlayers / 20.0));
        double stated = steadyPutts / Turns.PUTTS_TO_FALSE_TURN;
        assertThat((double) falseTurns).isLessThanOrEqualTo(stated + 2 * Math.sqrt(stated));
        assertThat((double) skillsHeld / skills).isBetween(0.90, 0.99);
    }

    private void score(Truth truth, Insight insight) {
        scoreTurns(truth, insight);
        Set<Trait> told = new HashSet<>();
        insight.weaknesses().weak().forEach(each -> told.add(each.trait()));
        insight.byTrait().ifPresent(all -> all.wider().forEach(each -> told.add(each.trait())));
        for (Weakness each : truth.weaknesses()) {
            weakPlanted++;
            weakFound += told.contains(TRAITS.get(each)) ? 1 : 0;
        }
        if (truth.plain()) {
            plainPlayers++;
            plainToldWeak += told.isEmpty() ? 0 : 1;
        }
        if (truth.weaknesses().isEmpty() && truth.course() != Truth.Course.DRIFTS) {
            scoreSkill(truth, insight);
        }
    }

    private void scoreTurns(Truth truth, Insight insight) {
        List<Turn> turns = insight.turns().turns();
        switch (truth.course()) {
            case STEADY -> {
                steadyPutts += insight.sessions().shots().size();
                falseTurns += turns.size();
            }
            case DRIFTS -> {
                drifting++;
                driftsNoticed += turns.isEmpty() ? 0 : 1;
            }
            case TURNS -> {
                turnsPlanted++;
                int session = sessionAt(insight, truth.turns().get(0).toEpochMilli());
                turns.stream().filter(turn -> Math.abs(turn.session() - session) <= NEAR_SESSIONS
                        && turn.better() == better(truth)).findFirst().ifPresent(turn -> {
                            turnsFound++;
                            sessionsOff += Math.abs(turn.session() - session);
                            partsRight += Set.copyOf(turn.changed()).equals(parts(truth)) ? 1 : 0;
                        });
            }
        }
    }

    private void scoreSkill(Truth truth, Insight insight) {
        long nowMs = insight.sessions().atMs(insight.sessions().count() - 1);
        Stroke stroke = truth.at(Instant.ofEpochMilli(nowMs));
        insight.stroke().ifPresent(fit -> {
            skills += 2;
            skillsHeld += fit.direction().degrees().holds(stroke.directionSdDeg()) ? 1 : 0;
            skillsHeld += fit.pace().percent().holds(100 * stroke.paceSd()) ? 1 : 0;
        });
    }

    private static int sessionAt(Insight insight, long atMs) {
        int session = 0;
        while (session < insight.sessions().count() && insight.sessions().atMs(session) < atMs) {
            session++;
        }
        return session;
    }

    private static boolean better(Truth truth) {
        return directionTimes(truth) * paceTimes(truth) < 1;
    }

    private static Set<Part> parts(Truth truth) {
        Set<Part> parts = new HashSet<>();
        if (Math.abs(Math.log(directionTimes(truth))) > 0.01) {
            parts.add(Part.DIRECTION);
        }
        if (Math.abs(Math.log(paceTimes(truth))) > 0.01) {
            parts.add(Part.PACE);
        }
        return parts;
    }

    private static double directionTimes(Truth truth) {
        return truth.eras().get(1).stroke().directionSdDeg() / truth.eras().get(0).stroke().directionSdDeg();
    }

    private static double paceTimes(Truth truth) {
        return truth.eras().get(1).stroke().paceSd() / truth.eras().get(0).stroke().paceSd();
    }
}
