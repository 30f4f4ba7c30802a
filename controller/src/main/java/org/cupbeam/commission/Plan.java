package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.commission.Step.Kind;

/** Which steps there are, by what is known: without beams none is measured, and what balls told is not asked for. */
final class Plan {
    private Plan() {
    }

    static List<Step> of(boolean isCheck, List<Wanted> wanted, Findings findings) {
        List<Step> steps = new ArrayList<>();
        steps.add(Step.of(Kind.SETTLE));
        wanted.forEach(each -> steps.add(Step.find(each)));
        steps.add(Step.of(Kind.QUIET));
        if (!isCheck) {
            toBeMeasured(findings, steps);
        }
        steps.add(Step.of(Kind.DONE));
        return steps;
    }

    private static void toBeMeasured(Findings findings, List<Step> steps) {
        int beams = findings.beams().size();
        if (beams > 0) {
            steps.add(Step.of(Kind.HEIGHT));
        }
        if (beams > 1) {
            steps.add(Step.of(Kind.ROLL));
        }
        for (int i = 0; i < beams; i++) {
            steps.add(Step.place(i));
        }
        steps.add(Step.of(Kind.LIMIT));
        if (!findings.rolledBothWays()) {
            steps.add(Step.of(Kind.UPHILL));
        }
        if (findings.balls().isEmpty()) {
            steps.add(Step.of(Kind.GREEN));
        }
    }
}
