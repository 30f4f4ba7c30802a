package org.cupbeam.commission;

import java.util.Locale;
import org.cupbeam.green.Hole;

/** What is entered: each number into its place among the findings. */
final class Answers {
    private static final double HIGHEST_MM = 38;
    private static final double LOWEST_MM = 5;

    private final Findings findings;

    Answers(Findings findings) {
        this.findings = findings;
    }

    /** @throws IllegalArgumentException in words, where it makes no sense */
    void take(Step step, String text) {
        switch (step.kind()) {
            case HEIGHT -> findings.heightMm = Typed.number(text, LOWEST_MM, HIGHEST_MM,
                    "a beam's height in mm that a ball of 42.67 mm blocks well");
            case PLACE -> findings.place(step.beam(), text.isBlank() ? Place.UNKNOWN : Typed.place(text));
            case LIMIT -> findings.limitMm = Typed.number(text, Hole.RADIUS_MM, 10_000, "a limit in mm");
            case UPHILL -> findings.uphillPercent = Typed.number(text, -20, 20, "a slope in %");
            case GREEN -> findings.stimpFt = Typed.number(text, 3, 20, "a green's reading in feet");
            case SETTLE, FIND, QUIET, ROLL, DONE -> throw new IllegalArgumentException("nothing is entered here");
        }
    }

    /** Why this place cannot be left so, in words; null where it can. */
    String placesLacking(Step step) {
        if (findings.place(step.beam()).known()) {
            return disagreement(step.beam());
        }
        if (findings.balls().isEmpty()) {
            return "no balls were rolled, so each place has to be measured (back goes to the balls)";
        }
        boolean last = step.beam() == findings.beams().size() - 1;
        return last && !findings.anyPlaceKnown()
                ? "balls beside the hole do not tell where the hole is: measure one beam from the hole's centre" : null;
    }

    /** Two places that were measured, and balls that say otherwise. */
    private String disagreement(int beam) {
        Place here = findings.place(beam);
        for (int other = 0; other < beam && !findings.balls().isEmpty(); other++) {
            Place there = findings.place(other);
            if (there.known()) {
                ArrayEstimate balls = findings.spacings();
                double rolled = balls.placesMm().get(beam) - balls.placesMm().get(other);
                double measured = here.mm() - there.mm();
                double sd = Math.hypot(Math.hypot(here.sdMm(), there.sdMm()),
                        Math.hypot(balls.spacingSdsMm().get(beam), balls.spacingSdsMm().get(other)));
                if (Math.abs(rolled - measured) > 4 * sd) {
                    findings.place(beam, Place.UNKNOWN);
                    return String.format(Locale.ROOT, "from %s to %s it is %.1f mm by what was entered, %.1f by the balls, more than"
                            + " both may err: measure again, or Enter leaves it to the balls", findings.beamNames().get(other),
                            findings.beamNames().get(beam), measured, rolled);
                }
            }
        }
        return null;
    }
}
