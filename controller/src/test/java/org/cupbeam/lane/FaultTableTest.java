package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.DocTable;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.lane.FaultyEvening.Kind;
import org.cupbeam.rig.Channel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Each kind of fault, of each kind of sensor, on each rig that has it, on a simulated evening in a busy room: what the lane says,
 * within how long, what it logs, and that the notes say so.
 */
class FaultTableTest {
    private static final String NOTES = "docs/sensor-faults.md";
    private static final long USUAL_SEED = 4711;
    private static final long SEED = Long.getLong("cupbeam.seed", USUAL_SEED);
    private static final int TIMES = Integer.getInteger("cupbeam.evenings", 1);
    private static final int PUTTS = 60;

    @Test
    void eachFaultOnEachRigIsSaidAsTheNotesHaveItAndNothingFalseIsLogged() throws Exception {
        System.out.println("seed " + SEED + ", " + TIMES + " evenings of " + PUTTS + " putts for each fault");
        List<FaultRow> rows = new ArrayList<>();
        List<String> lines = new ArrayList<>();
        lines.add("| fault | of | rig | what the lane says | within | told of putts | false | untold | well again |");
        lines.add("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        for (Kind kind : Kind.values()) {
            for (PracticeRigs rigs : PracticeRigs.values()) {
                for (String sensor : sensors(kind, rigs)) {
                    FaultRow row = new FaultRow(rigs, kind, sensor).play(SEED, TIMES, PUTTS, begins(kind, sensor));
                    lines.add(row.line());
                    look(row);
                    rows.add(row);
                }
            }
        }
        if (SEED == USUAL_SEED && TIMES == 1) {
            rows.forEach(FaultTableTest::judge);
            DocTable.says(NOTES, "faults", lines);
        }
    }

    private static void look(FaultRow row) {
        if (Boolean.getBoolean("cupbeam.look")) {
            System.out.println(row.line() + " " + row.unknown);
            row.wrong.stream().limit(4).forEach(each -> System.out.println("    " + each));
        }
    }

    /**
     * What the edges of one line tell: said each time, nothing false logged, and over when it is over. A beam that is blocked from
     * one moment to the next, though, looks like one in which a ball has come to rest: it may be counted for one.
     */
    private static void judge(FaultRow row) {
        boolean blocked = row.kind == Kind.STUCK_ON || row.kind == Kind.BALL_LEFT;
        switch (row.kind) {
            case STUCK_ON, BALL_LEFT, CHATTERING, FLICKERING, REVERSED, FULL -> {
                assertThat(row.said).as("times that the lane said %s, seed %d", row, SEED).isEqualTo(TIMES);
                assertThat(row.unknown).as("what it cannot know with %s", row).isNotEmpty();
                assertThat(row.wrong.size()).as("logged with %s, seed %d: %s", row, SEED, row.wrong)
                        .isLessThanOrEqualTo(blocked ? TIMES : 0);
                assertThat(row.well || row.kind.endS() == Double.POSITIVE_INFINITY).as("%s: well again", row).isTrue();
            }
            case STUCK_OFF, UNPLUGGED, SWAPPED, MISPLACED -> assertThat(row.said)
                    .as("times that the lane said %s, seed %d", row, SEED).isEqualTo(canBeKnown(row) ? TIMES : 0);
            case NONE -> { }
        }
    }

    /** Whether the balls of an evening can tell. */
    private static boolean canBeKnown(FaultRow row) {
        return switch (row.kind) {
            case SWAPPED -> row.sensor.startsWith("before");
            case MISPLACED -> !row.sensor.startsWith("past");
            default -> !row.sensor.equals("cup") || row.rigs != PracticeRigs.GATE;
        };
    }

    /** One of each pair, before which nothing of the kind stands. */
    private static List<String> sensors(Kind kind, PracticeRigs rigs) {
        return rigs.level().channels().stream().filter(each -> switch (each.kind()) {
            case CUP -> kind != Kind.SWAPPED && kind != Kind.MISPLACED && kind != Kind.NONE && kind != Kind.BALL_LEFT
                    && kind != Kind.STUCK_ON;
            case STRIKE -> kind == Kind.STUCK_ON || kind == Kind.UNPLUGGED || kind == Kind.CHATTERING || kind == Kind.REVERSED
                    || kind == Kind.STUCK_OFF;
            case BEAM -> kind != Kind.FULL && kind != Kind.NONE && (each.name().endsWith("-1")
                    || each.name().equals("before-2") && (kind == Kind.STUCK_ON || kind == Kind.UNPLUGGED));
            case PEDAL -> false;
        }).map(Channel::name).toList();
    }

    private static String begins(Kind kind, String sensor) {
        String called = sensor.equals("cup") ? "the cup's sensor" : sensor.equals("strike") ? "the strike sensor"
                : "beam " + sensor;
        return switch (kind) {
            case STUCK_ON, BALL_LEFT, FULL -> called + (sensor.equals("strike") ? " is pressed" : " is blocked");
            case CHATTERING, FLICKERING -> called + " turns on and off";
            case REVERSED -> called + " is on at rest and off for moments";
            case STUCK_OFF, UNPLUGGED -> called + (sensor.equals("cup") ? "" : sensor.equals("strike") ? " feels no" : " sees nothing");
            case SWAPPED -> "more balls came back past the beams " + sensor;
            case MISPLACED -> "the beams " + sensor;
            case NONE -> called;
        };
    }

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void ofALaneThatIsWellNothingIsSaidThatIsNotSo(PracticeRigs rigs) {
        FaultyEvening evening = new FaultyEvening(Kind.NONE, rigs.level(), null, SEED, 80);
        assertThat(evening.untold).isZero();
        assertThat(evening.said).as("somebody may stand in a beam, and is told of").allMatch(
                each -> each.words().contains("is blocked all the time"));
    }
}
