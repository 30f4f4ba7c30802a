package org.cupbeam.event;

/** A journal's sequence number as text: 16 digits, so that order as text is order as number. */
public final class Sequence {
    /** The largest number that 16 digits hold. */
    public static final long MAX = 9_999_999_999_999_999L;

    private Sequence() {
    }

    /** @throws IllegalArgumentException outside 0..{@link #MAX} */
    public static String text(long sequence) {
        if (sequence < 0 || sequence > MAX) {
            throw new IllegalArgumentException("sequence " + sequence + " does not fit 16 digits");
        }
        String digits = Long.toString(sequence);
        return "0".repeat(16 - digits.length()) + digits;
    }

    /** The number, or -1 where the text is not 16 digits. */
    public static long parse(String text) {
        if (text.length() != 16) {
            return -1;
        }
        long value = 0;
        for (int i = 0; i < 16; i++) {
            int digit = text.charAt(i) - '0';
            if (digit < 0 || digit > 9) {
                return -1;
            }
            value = value * 10 + digit;
        }
        return value;
    }
}
