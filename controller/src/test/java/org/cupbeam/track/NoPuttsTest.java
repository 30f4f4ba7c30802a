package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What happens on a green and is no putt logs nothing, and does not disturb the putt that follows. */
class NoPuttsTest {
    private static final double AFTER_S = 20;

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void aShoeThatBlocksBothBeamsOfAPair(PracticeRigs rigs) {
        for (double forS : new double[] {0.08, 0.2, 0.5, 3}) {
            for (double stepS : new double[] {-0.03, 0, 0.04}) {
                for (List<Beam> pair : pairs(rigs.level())) {
                    Script script = new Script(rigs.level()).blocks(name(rigs, pair.get(0)), 2, 2 + forS)
                            .blocks(name(rigs, pair.get(1)), 2 + stepS, 2 + stepS + forS);
                    logsOnlyTheNext(rigs, script, forS + " s, the second beam " + stepS + " s later, in " + pair);
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void aBallThatIsRolledBack(PracticeRigs rigs) {
        for (double speed : new double[] {300, 800, 1500}) {
            Script script = new Script(rigs.level());
            for (Beam beam : rigs.level().beams()) {
                double atS = 2 + (1000 - beam.positionMm()) / speed;
                double halfS = FakeBall.halfChordMm(beam) / speed;
                script.blocks(name(rigs, beam), atS - halfS, atS + halfS);
            }
            logsOnlyTheNext(rigs, script, speed + " mm/s");
        }
    }

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void aPutterHeadThroughOneBeam(PracticeRigs rigs) {
        for (Beam beam : rigs.level().beams()) {
            for (double forS : new double[] {0.02, 0.05, 0.1}) {
                Script script = new Script(rigs.level()).blocks(name(rigs, beam), 2, 2 + forS);
                logsOnlyTheNext(rigs, script, forS + " s in " + beam);
            }
        }
    }

    /** Each for itself could be a ball's: not together. */
    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void passagesWhoseTimingFitsNoOneRoll(PracticeRigs rigs) {
        for (List<Beam> pair : pairs(rigs.level())) {
            for (double betweenS : new double[] {0.001, 0.2, 0.5, 1.5}) {
                Script script = new Script(rigs.level()).blocks(name(rigs, pair.get(0)), 2, 2.042)
                        .blocks(name(rigs, pair.get(1)), 2.042 + betweenS, 2.084 + betweenS);
                logsOnlyTheNext(rigs, script, betweenS + " s between two passages at 1 m/s, in " + pair);
            }
            Script faster = new Script(rigs.level()).blocks(name(rigs, pair.get(0)), 2, 2.06)
                    .blocks(name(rigs, pair.get(1)), 2.08, 2.105);
            logsOnlyTheNext(rigs, faster, "from 0.7 to 1.7 m/s, in " + pair);
        }
    }

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void aReceiverThatChattersForAsLongAsABallTakes(PracticeRigs rigs) {
        for (Beam beam : rigs.level().beams()) {
            Script script = new Script(rigs.level());
            for (int i = 0; i < 40; i++) {
                script.blocks(name(rigs, beam), 2 + 0.0013 * i, 2 + 0.0013 * i + 0.0006);
            }
            logsOnlyTheNext(rigs, script, "in " + beam);
        }
    }

    /** It passes a pair as evenly as a ball, but faster than hardly a putt, and just after somebody was seen there. */
    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void aPutterHeadThatSwingsThroughAPairWhileSomebodyIsAbout(PracticeRigs rigs) {
        List<Beam> first = pairs(rigs.level()).get(0);
        Script script = new Script(rigs.level()).blocks(name(rigs, first.get(1)), 2, 2.3);
        for (Beam beam : first) {
            double atS = 2.7 + (beam.positionMm() - first.get(0).positionMm()) / 2500;
            double halfS = FakeBall.halfChordMm(beam) / 2500;
            script.blocks(name(rigs, beam), atS - halfS, atS + halfS);
        }
        logsOnlyTheNext(rigs, script, "at 2.5 m/s");
    }

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void somethingThatStandsInABeamBehindTheFirst(PracticeRigs rigs) {
        List<Beam> beams = rigs.level().beams();
        for (Beam beam : beams.subList(1, beams.size())) {
            logsOnlyTheNext(rigs, new Script(rigs.level()).blocks(name(rigs, beam), 2, 5), "in " + beam);
        }
    }

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void spikes(PracticeRigs rigs) {
        Script script = new Script(rigs.level());
        for (Beam beam : rigs.level().beams()) {
            for (int i = 0; i < 40; i++) {
                script.blocks(name(rigs, beam), 2 + 0.013 * i, 2 + 0.013 * i + 0.0002 + 1e-5 * i);
            }
        }
        logsOnlyTheNext(rigs, script, "up to 0.6 ms, every 13 ms");
    }

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void aHandInTheCupAndAShoeAtOnce(PracticeRigs rigs) {
        List<Beam> pair = pairs(rigs.level()).get(0);
        logsOnlyTheNext(rigs, new Script(rigs.level()).hand(2, 1).blocks(name(rigs, pair.get(0)), 1.8, 3.1)
                .blocks(name(rigs, pair.get(1)), 1.9, 3.2), "");
    }

    private static void logsOnlyTheNext(PracticeRigs rigs, Script before, String what) {
        Rig rig = rigs.level();
        FakeBall ball = FakeBall.stoppingAt(rig, AFTER_S, -3000, 1200);
        boolean strikes = rigs == PracticeRigs.STRUCK || rigs == PracticeRigs.FULL;
        Played played = (strikes ? before.putts(ball) : before.rolls(ball)).played();

        assertThat(played.attempts).as(what).singleElement().satisfies(each -> {
            assertThat(each.timeNs() * 1e-9).isGreaterThanOrEqualTo(AFTER_S);
            assertThat(each.finishMm()).isCloseTo(1200, within(15.0));
        });
    }

    private static List<List<Beam>> pairs(Rig rig) {
        List<Beam> beams = rig.beams();
        return IntStream.range(0, beams.size() / 2).mapToObj(i -> beams.subList(2 * i, 2 * i + 2)).toList();
    }

    private static String name(PracticeRigs rigs, Beam beam) {
        return rigs.level().channels().get(beam.channel()).name();
    }
}
