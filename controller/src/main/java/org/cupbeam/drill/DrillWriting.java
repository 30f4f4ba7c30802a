package org.cupbeam.drill;

import java.math.BigDecimal;
import java.util.stream.Collectors;

/** A {@link Drill} into the text of a drill file. */
final class DrillWriting {
    private DrillWriting() {
    }

    static String text(Drill drill) {
        StringBuilder to = new StringBuilder("name = ").append(quoted(drill.name())).append("\n\n");
        to.append("[stations]\n").append(stations(drill.stations()));
        to.append("\n[balls]\ncount = ").append(drill.balls());
        to.append("\nsupply = ").append(quoted(drill.supply().word()));
        to.append("\n\n[advance]\nholed = ").append(drill.holed());
        to.append("\n\n[overshoot]\n");
        drill.limitMm().ifPresent(mm -> to.append("limit_mm = ").append(number(mm)).append('\n'));
        to.append("penalty = ").append(quoted(drill.penalty().word()));
        return to.append("\n\n[duel]\nturns = ").append(quoted(drill.turns().word())).append('\n').toString();
    }

    private static String stations(Stations stations) {
        if (stations instanceof Stations.Ladder ladder) {
            return "first_mm = " + number(ladder.firstMm()) + "\nstep_mm = " + number(ladder.stepMm())
                    + "\ncount = " + ladder.count() + "\n";
        }
        return "at_mm = [" + ((Stations.Marked) stations).atMm().stream().map(DrillWriting::number)
                .collect(Collectors.joining(", ")) + "]\n";
    }

    /** As few digits as tell it from its neighbours, never with an exponent. */
    private static String number(double value) {
        return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
    }

    private static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }
}
