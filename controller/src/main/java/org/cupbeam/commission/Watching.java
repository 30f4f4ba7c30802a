package org.cupbeam.commission;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import org.cupbeam.rig.Channel.Kind;

/** What is made of edges at each step, and of what came of it: said, kept among the findings, or open until it is put right. */
final class Watching implements Watch {
    private final Lines lines;
    private final Findings findings;
    private final boolean isCheck;
    private final Map<String, String> open;
    private final Consumer<String> say;
    private final Runnable next;
    private Step step;
    private Watch watch = Watch.NONE;
    private Rolling rolling;

    /** @param open what is wrong, by what it is about; added to and taken from @param next is run when a step is done */
    Watching(Lines lines, Findings findings, boolean isCheck, Map<String, String> open, Consumer<String> say, Runnable next) {
        this.lines = lines;
        this.findings = findings;
        this.isCheck = isCheck;
        this.open = open;
        this.say = say;
        this.next = next;
    }

    /** Begins a step, or begins it anew. */
    void begin(Step of) {
        step = of;
        watch = switch (of.kind()) {
            case SETTLE -> new Settling(lines, findings.all(), this::settledDown);
            case FIND -> new Search(lines, of.sensor(), this::sought);
            case QUIET -> new QuietMinute(lines, findings.all(), this::wasQuiet);
            case ROLL -> rolling = new Rolling(findings, say);
            case HEIGHT, PLACE, LIMIT, UPHILL, GREEN, DONE -> Watch.NONE;
        };
    }

    @Override
    public void edge(int line, boolean high, long timeNs) {
        watch.edge(line, high, timeNs);
    }

    @Override
    public void settled(long timeNs) {
        watch.settled(timeNs);
    }

    /** The balls of the step that is, or was, about them. */
    Rolling rolling() {
        return rolling;
    }

    private void settledDown(List<String> troubles) {
        troubles.forEach(say);
        for (Found each : findings.all()) {
            troubles.stream().filter(words -> words.startsWith(each.sensor().name() + " ")).findFirst()
                    .ifPresent(words -> open.put(each.sensor().name(), words));
        }
        next.run();
    }

    private void sought(Search.Outcome outcome) {
        Wanted sensor = step.sensor();
        if (outcome instanceof Search.Turned turned && !wrongWayRound(turned)) {
            findings.found(new Found(sensor, turned.line(), turned.active()));
            open.remove(sensor.name());
            say.accept(lines.called(turned.line()) + " answers; it is " + turned.active().name().toLowerCase(Locale.ROOT)
                    + " when " + (sensor.kind() == Kind.PEDAL ? "pressed." : "blocked or struck."));
            next.run();
            return;
        }
        String words = outcome instanceof Search.Trouble trouble ? trouble.words()
                : sensor.name() + " answers, but the wrong way round: it reads blocked while it is clear; active = \""
                        + ((Search.Turned) outcome).active().name().toLowerCase(Locale.ROOT) + "\" in the rig file would do";
        open.put(sensor.name(), sensor.name() + ": " + words);
        say.accept("Not yet: " + words + ".");
        begin(step);
    }

    private boolean wrongWayRound(Search.Turned turned) {
        Found known = findings.of(step.sensor());
        return isCheck && known.active() != turned.active();
    }

    private void wasQuiet(List<String> troubles) {
        open.remove("quiet");
        if (!troubles.isEmpty()) {
            open.put("quiet", String.join("; ", troubles));
            troubles.forEach(say);
            say.accept("Put it right and press Enter for another minute, or skip.");
            watch = Watch.NONE;
            return;
        }
        findings.quietCounted = true;
        say.accept("Quiet: no line turned more than " + QuietMinute.EDGES_MAX + " times.");
        next.run();
    }
}
