package org.cupbeam.studio.insight.advice;

/**
 * One thing to do next.
 *
 * @param rule    by which it follows
 * @param what    to do, as a sentence
 * @param because the finding that it follows from, as a sentence, with its data
 */
public record Advice(Rule rule, String what, String because) {

    /** The rules, the most urgent first. */
    public enum Rule {
        /** The last turn was for the worse, and is recent. */
        LOOK_BACK("A turn for the worse within the last sessions: look at what was new then."),
        /** A kind of putts is weak. */
        WEAKEST_FIRST("A kind of putts that is clearly weaker than the others: practise it first."),
        /** Another length past the hole would let more putts drop. */
        AIM("Another pace would, by the stroke as measured, let clearly more putts drop: try it."),
        /** Direction or pace, whichever costs more putts. */
        STROKE_PART("Of direction and pace, the one that would gain clearly more if it were a tenth better: work on it."),
        /** Three-putts from afar are frequent. */
        LAG("Three putts from long range more often than one time in eight: practise length from there."),
        /** Many putts have nothing to do with what was meant. */
        CLEAN_STRIKE("More than one putt in twenty-five of quite another length than meant: practise the strike."),
        /** The number of balls that makes the drill a fair test. */
        FAIR_TEST("Play the drill so that the outcome is open: with as many balls as give an even chance."),
        /** The last turn was for the better, and is recent. */
        KEEP("A turn for the better within the last sessions: keep what was new then."),
        /** Some more putts would tell. */
        FIND_OUT("A kind of putts of which a few more would tell whether it is weak: putt them.");

        private final String words;

        Rule(String words) {
            this.words = words;
        }

        /** The rule, stated. */
        public String words() {
            return words;
        }
    }
}
