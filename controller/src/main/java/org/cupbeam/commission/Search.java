package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Channel.Level;

/**
 * Which line turns while one sensor is made to: it leaves its level of rest and comes back, all others stay. What it rested
 * at is what it is when clear, so the other level is active.
 */
final class Search implements Watch {
    /** Nothing more has turned for so long: what was done is done. */
    private static final long CALM_NS = 400_000_000;
    private static final long NOTHING_NS = 30_000_000_000L;
    private static final long NOT_BACK_NS = 10_000_000_000L;
    /** No hand reaches into two beams at one instant. */
    private static final long INSTANT_NS = 1_000_000;

    /** What it came to. */
    sealed interface Outcome permits Turned, Trouble {
    }

    /** One line did what was asked. */
    record Turned(int line, Level active) implements Outcome {
    }

    /** Something else happened. @param words what, and what would do @param stuck the line that has not come back, or -1 */
    record Trouble(String words, int stuck) implements Outcome {
    }

    private final Lines lines;
    private final Wanted sensor;
    private final Consumer<Outcome> over;
    private final Movement[] moved;
    private long beganNs = -1;
    private long lastNs;
    private boolean ended;

    private static final class Movement {
        private final boolean rest;
        private long firstNs = -1;
        private long lastNs;
        private long awayNs;
        private boolean away;

        Movement(boolean rest, boolean high) {
            this.rest = rest;
            away = high != rest;
        }

        void edge(boolean high, long timeNs) {
            firstNs = firstNs < 0 ? timeNs : firstNs;
            if (away && high == rest) {
                awayNs += timeNs - lastNs;
            }
            away = high != rest;
            lastNs = timeNs;
        }
    }

    /** @param over is told once */
    Search(Lines lines, Wanted sensor, Consumer<Outcome> over) {
        this.lines = lines;
        this.sensor = sensor;
        this.over = over;
        moved = new Movement[lines.count()];
        for (int line = 0; line < moved.length; line++) {
            moved[line] = new Movement(lines.restsHigh(line), lines.isHigh(line));
        }
    }

    @Override
    public void edge(int line, boolean high, long timeNs) {
        begin(timeNs);
        if (!lines.isRestless(line)) {
            moved[line].edge(high, timeNs);
            lastNs = timeNs;
        }
    }

    private void begin(long timeNs) {
        if (beganNs < 0) {
            beganNs = timeNs;
            lastNs = timeNs;
            for (Movement each : moved) {
                each.lastNs = timeNs;
            }
        }
    }

    @Override
    public void settled(long timeNs) {
        begin(timeNs);
        List<Integer> turned = new ArrayList<>();
        int away = -1;
        for (int line = 0; line < moved.length; line++) {
            if (moved[line].away && !isBeside(line) && !lines.isRestless(line)) {
                away = line;
            } else if (moved[line].awayNs >= leastNs() && !isBeside(line)) {
                turned.add(line);
            }
        }
        if (ended) {
            return;
        }
        if (away >= 0) {
            if (timeNs - moved[away].lastNs >= NOT_BACK_NS) {
                end(new Trouble(lines.called(away) + " turned, and has not come back for " + NOT_BACK_NS / 1_000_000_000
                        + " s: take away what is in it; if nothing is, " + sensor.name()
                        + " never cleared: misaligned or unplugged", away));
            }
        } else if (turned.isEmpty()) {
            if (timeNs - beganNs >= NOTHING_NS) {
                end(new Trouble("no line turned: " + idle(), -1));
            }
        } else if (timeNs - lastNs >= CALM_NS) {
            end(judged(turned));
        }
    }

    private void end(Outcome outcome) {
        ended = true;
        over.accept(outcome);
    }

    /** Whoever drops a ball or presses a pedal may reach through beams that are known by now. */
    private boolean isBeside(int line) {
        return sensor.kind() != Kind.BEAM && lines.name(line) != null && !lines.name(line).equals(sensor.name());
    }

    private Outcome judged(List<Integer> turned) {
        if (turned.size() == 1) {
            int line = turned.get(0);
            String name = lines.name(line);
            return name == null || name.equals(sensor.name())
                    ? new Turned(line, moved[line].rest ? Level.LOW : Level.HIGH)
                    : new Trouble("that was " + lines.called(line) + ", not " + sensor.name() + ": go to the other, or two plugs are"
                            + " exchanged", -1);
        }
        String which = turned.stream().map(lines::called).collect(Collectors.joining(" and "));
        boolean atOnce = turned.stream().allMatch(each ->
                Math.abs(moved[each].firstNs - moved[turned.get(0)].firstNs) < INSTANT_NS
                        && Math.abs(moved[each].lastNs - moved[turned.get(0)].lastNs) < INSTANT_NS);
        return new Trouble(which + (atOnce ? " turned at the same instant: one lamp lights both receivers, or their wires touch"
                : " turned together: " + (sensor.kind() == Kind.BEAM
                        ? "block " + sensor.name() + " alone, with something narrow" : "do it once more, with nothing near the others")),
                -1);
    }

    private String idle() {
        return switch (sensor.kind()) {
            case BEAM -> sensor.name() + " never cleared (misaligned), or is unplugged, or hangs on a pin that is not watched";
            case CUP -> "the cup did not see the ball: dirty, misaligned or unplugged";
            case STRIKE -> "the strike sensor felt nothing: set its threshold lower, or see to its plug";
            case PEDAL -> "the pedal did nothing: see to its plug";
        };
    }

    /** Shorter than this is a spike, and no deed. */
    private long leastNs() {
        return switch (sensor.kind()) {
            case BEAM -> 10_000_000;
            case CUP -> 2_000_000;
            case STRIKE -> 500_000;
            case PEDAL -> 15_000_000;
        };
    }
}
