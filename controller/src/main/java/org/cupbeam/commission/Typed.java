package org.cupbeam.commission;

import java.util.Locale;
import java.util.regex.Pattern;
import org.cupbeam.rig.file.Shown;

/** Numbers that somebody typed. */
final class Typed {
    private static final Pattern NUMBER = Pattern.compile("[-+\u2212]?\\d{1,6}(\\.\\d{1,6})?");
    private static final double USUAL_WITHIN_MM = 2;

    private Typed() {
    }

    /**
     * A number in a range.
     *
     * @throws IllegalArgumentException in words
     */
    static double number(String text, double least, double most, String what) {
        String plain = text.strip();
        if (NUMBER.matcher(plain).matches()) {
            double number = Double.parseDouble(plain.replace('\u2212', '-'));
            if (number >= least && number <= most) {
                return number;
            }
        }
        throw new IllegalArgumentException(String.format(Locale.ROOT, "\"%s\" is not %s: a number from %s to %s, with a point and no unit",
                Shown.of(plain, 30), what, plain(least), plain(most)));
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString(Math.round(number)) : Double.toString(number);
    }

    /** A place in mm from the hole's centre, and, with a space between, to how many mm it was measured. */
    static Place place(String text) {
        String[] parts = text.strip().split("\\s+", 2);
        double within = parts.length < 2 ? USUAL_WITHIN_MM
                : number(parts[1].replace("±", ""), 0.1, 50, "how well a place was measured, in mm");
        return new Place(number(parts[0], -20_000, 20_000, "a place in mm from the hole's centre"), Within.sd(within));
    }
}
