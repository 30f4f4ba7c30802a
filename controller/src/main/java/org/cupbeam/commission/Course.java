package org.cupbeam.commission;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import org.cupbeam.commission.Step.Kind;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.file.Shown;

/**
 * Leads through a lane, step by step ({@link Step}): takes the levels of all lines that are watched, true for high, and what
 * somebody types, and says what to do next and what is wrong. It knows no clock but the edges'. Not for two threads at once.
 */
public final class Course implements EdgeSink {
    private final Lines lines;
    private final List<Wanted> wanted;
    private final boolean isCheck;
    private final Consumer<String> say;
    private final Findings findings;
    private final Answers answers;
    private final Watching watching;
    /** What is wrong and has not been put right, by what it is about. */
    private final Map<String, String> open = new LinkedHashMap<>();
    private List<Step> plan;
    private int at;

    private Course(List<Integer> gpios, List<Wanted> wanted, Collection<Found> known, Consumer<String> say) {
        lines = new Lines(gpios);
        this.wanted = wanted;
        this.say = say;
        isCheck = !known.isEmpty();
        findings = new Findings(lines, wanted);
        answers = new Answers(findings);
        known.forEach(findings::found);
        watching = new Watching(lines, findings, isCheck, open, say, this::next);
        plan = Plan.of(isCheck, wanted, findings);
        watching.begin(step());
    }

    /**
     * Of a new lane.
     *
     * @param gpios the lines that are watched, by their SoC's numbers
     * @param say   takes a line of words at a time
     */
    public static Course ofNewLane(List<Integer> gpios, List<Wanted> wanted, Consumer<String> say) {
        return new Course(gpios, wanted, List.of(), say);
    }

    /** Of a lane that is there; each sensor's line is its index in {@code gpios}. */
    public static Course check(List<Integer> gpios, List<Found> known, Consumer<String> say) {
        return new Course(gpios, known.stream().map(Found::sensor).toList(), known, say);
    }

    /** Where one is. */
    public Step step() {
        return plan.get(at);
    }

    /** What it asks for. */
    public String prompt() {
        return Prompts.of(step(), findings);
    }

    /** What is wrong with the lane and has not been put right. */
    public List<String> open() {
        return List.copyOf(open.values());
    }

    /** What was found and entered by now, to be written down by whoever ends early; empty where nothing was. */
    public List<String> soFar() {
        return isCheck ? List.of() : findings.inWords();
    }

    /** What was found; for a new lane, once all is done. */
    public Drawn drawn() {
        return new Drawn(findings, open());
    }

    @Override
    public void edge(int line, boolean high, long timeNs) {
        lines.level(line, high);
        watching.edge(line, high, timeNs);
    }

    @Override
    public void settled(long timeNs) {
        watching.settled(timeNs);
    }

    /** Takes a line that was typed. */
    public void answer(String typed) {
        String text = typed.strip();
        switch (text.toLowerCase(Locale.ROOT)) {
            case "help" -> Prompts.HELP.lines().forEach(say);
            case "skip" -> skip();
            case "back" -> back();
            case "undo" -> undo();
            case "" -> again();
            default -> enter(text);
        }
    }

    private void again() {
        switch (step().kind()) {
            case SETTLE, FIND, QUIET -> {
                lines.atRest();
                watching.begin(step());
                say.accept("Watching anew; what the lines are now counts as nothing in any beam.");
            }
            case ROLL -> say.accept(watching.rolling().soFar());
            case HEIGHT, LIMIT, UPHILL, GREEN, DONE -> next();
            case PLACE -> enter("");
        }
    }

    private void skip() {
        switch (step().kind()) {
            case FIND -> {
                if (!isCheck) {
                    findings.forget(step().sensor());
                    open.remove(step().sensor().name());
                } else {
                    open.putIfAbsent(step().sensor().name(), step().sensor().name() + " was not tried");
                }
                next();
            }
            case QUIET -> {
                open.put("quiet", "noise was not counted");
                next();
            }
            case ROLL -> {
                findings.balls().clear();
                next();
            }
            case SETTLE, HEIGHT, PLACE, LIMIT, UPHILL, GREEN, DONE -> again();
        }
    }

    private void undo() {
        if (step().kind() == Kind.ROLL && watching.rolling().undo()) {
            say.accept("That ball is taken back. " + watching.rolling().soFar());
        } else {
            back();
        }
    }

    private void back() {
        if (at == 0) {
            say.accept("This is the first step.");
            return;
        }
        go(at - 1);
    }

    private void enter(String text) {
        try {
            if (step().isDeed() && !text.equalsIgnoreCase("done") || step().kind() == Kind.DONE) {
                throw new IllegalArgumentException("\"" + Shown.of(text, 30)
                        + "\" is nothing that could be answered here; help says what is");
            }
            if (step().isDeed()) {
                done();
            } else {
                answers.take(step(), text);
                next();
            }
        } catch (IllegalArgumentException nonsense) {
            say.accept(nonsense.getMessage());
        }
    }

    private void done() {
        if (step().kind() != Kind.ROLL) {
            throw new IllegalArgumentException("this ends by itself; skip leaves it out");
        }
        watching.rolling().finish();
        next();
    }

    private void next() {
        if (step().kind() == Kind.PLACE) {
            String lacking = answers.placesLacking(step());
            if (lacking != null) {
                say.accept(lacking);
                return;
            }
        }
        plan = Plan.of(isCheck, wanted, findings);
        go(at + 1);
    }

    private void go(int to) {
        at = Math.min(to, plan.size() - 1);
        Step step = step();
        if (step.kind() == Kind.FIND && !isCheck) {
            findings.forget(step.sensor());
        }
        if (step.kind() == Kind.FIND || step.kind() == Kind.ROLL) {
            findings.balls().clear();
            findings.forgetPlaces();
        }
        watching.begin(step());
    }
}
