package org.cupbeam.commission;

/** What each step asks for. */
final class Prompts {
    /** What may be typed at any step. */
    static final String HELP = """
            Enter: once more, or the value in brackets. skip: leave this out. back: the step before. undo: take the last ball or
            answer back. done: enough balls. help: this. quit: end; nothing is written before the last step asks for it.
            Whoever ends early begins anew: finding a sensor again takes a second, and nothing is believed of a plug that somebody changed
            meanwhile. What was found and measured is said at the end, to be written down.""";

    private Prompts() {
    }

    static String of(Step step, Findings known) {
        return switch (step.kind()) {
            case SETTLE -> "Nobody touches anything for two seconds; nothing is in any beam.";
            case FIND -> switch (step.sensor().kind()) {
                case BEAM -> "Block " + step.sensor().name() + " now, alone, for about a second, and take your hand away.";
                case CUP -> "Drop a ball into the cup, and leave it there or take it out.";
                case STRIKE -> "Strike a ball once.";
                case PEDAL -> "Press the pedal once, shortly.";
            };
            case QUIET -> "All the room's lights on, sunlight as on a bright day. Nobody touches anything for a minute.";
            case HEIGHT -> "How high do the beams stand above the surface, in mm? [" + known.heightMm + "]";
            case ROLL -> "Roll balls beside the hole through all beams, one at a time, slow ones and fast ones: "
                    + Rolling.BALLS_EACH_WAY + " or more as putts go, then as many back. Then type done.";
            case PLACE -> "Where does " + known.beamNames().get(step.beam()) + " stand, in mm from the hole's centre (before it"
                    + " negative), and how well was that measured, such as -300 2? "
                    + (known.balls().isEmpty() ? "" : "[leave it to the balls]");
            case LIMIT -> "How far past the hole's centre may a miss finish, in mm? [" + known.limitMm + "]";
            case UPHILL -> "Slope along the line toward the hole in %, uphill positive? [" + known.uphillPercent + "]";
            case GREEN -> "The green's reading in feet? [" + known.stimpFt + "]";
            case DONE -> "All steps are done.";
        };
    }
}
