package org.cupbeam.studio.insight.words;

import java.util.Locale;

/** How lengths are told to people. */
public enum Units {
    /** Metres, and centimetres below one. */
    METRIC {
        @Override
        public String length(double mm) {
            double size = Math.abs(mm);
            return size < 995 ? Math.round(size / 10) + " cm" : String.format(Locale.ROOT, "%.1f m", size / 1000);
        }
    },
    /** Feet, with inches below ten feet, and inches alone below three. */
    FEET {
        @Override
        public String length(double mm) {
            long inches = Math.round(Math.abs(mm) / MM_PER_IN);
            if (inches < 36) {
                return inches + " in";
            }
            if (inches >= 120 || inches % 12 == 0) {
                return Math.round(inches / 12.0) + " ft";
            }
            return inches / 12 + " ft " + inches % 12 + " in";
        }
    };

    /** Exactly, by definition. */
    public static final double MM_PER_IN = 25.4;
    /** Exactly, by definition. */
    public static final double MM_PER_FT = 304.8;

    /** A length without its sign, as {@code 2.7 m} or {@code 9 ft}. */
    public abstract String length(double mm);
}
