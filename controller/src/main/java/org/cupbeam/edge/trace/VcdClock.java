package org.cupbeam.edge.trace;

/**
 * The time of a trace. A unit is a power of ten of a nanosecond, so its digits are the time's own: zeros are added for a
 * coarser unit, and for a finer one the last digits are what is less than a nanosecond.
 */
final class VcdClock {
    /** Long.MAX_VALUE without its last digit, which is 7. */
    private static final long TENTH_MAX = Long.MAX_VALUE / 10;

    private final int finerDigits;
    private final long factor;
    private final long wholeMax;
    private long timeNs;
    private long remainder;

    VcdClock(Timescale timescale) {
        finerDigits = Math.max(0, -timescale.exponent());
        long power = 1;
        for (int i = 0; i < timescale.exponent(); i++) {
            power *= 10;
        }
        factor = power;
        wholeMax = Long.MAX_VALUE / power;
    }

    long timeNs() {
        return timeNs;
    }

    /** Moves to the time of a word of the form {@code #123}. */
    void advance(Tokens word) throws TraceException {
        int split = Math.max(word.from + 1, word.to - finerDigits);
        long whole = digits(word, word.from + 1, split);
        long rest = digits(word, split, word.to);
        if (word.length() == 1) {
            throw word.wrong("a time without digits");
        }
        if (whole > wholeMax) {
            throw tooLate(word);
        }
        long nextNs = whole * factor;
        if (nextNs < timeNs || nextNs == timeNs && rest < remainder) {
            throw word.wrong("time goes back to " + word.shown(word.from) + " (" + nextNs + " ns) from " + timeNs + " ns");
        }
        timeNs = nextNs;
        remainder = rest;
    }

    private static long digits(Tokens word, int from, int to) throws TraceException {
        long value = 0;
        for (int i = from; i < to; i++) {
            int digit = word.bytes[i] - '0';
            if (digit < 0 || digit > 9) {
                throw word.wrong('"' + word.shown(word.from) + "\" is no time; # and a whole number would do");
            }
            if (value > TENTH_MAX || value == TENTH_MAX && digit > 7) {
                throw tooLate(word);
            }
            value = value * 10 + digit;
        }
        return value;
    }

    private static TraceException tooLate(Tokens word) {
        return word.wrong("the time " + word.shown(word.from) + " is beyond 292 years");
    }
}
