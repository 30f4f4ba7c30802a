package org.cupbeam.studio.store.sheet;

import java.util.Map;

/**
 * A row that was read, by its columns.
 *
 * @param where  for errors: the sheet and the row's number
 * @param values texts, numbers and truth values; a column that is not there is as good as null
 */
public record Cells(String where, Map<String, Object> values) {
    /** The most columns that a row may have: more than three times as many as any export. */
    static final int MOST_COLUMNS = 100;
    private static final int LONGEST_SHOWN = 40;
    private static final int MOST_COUNTED = 1_000_000;

    /** Whether there is something in a column. */
    public boolean has(String column) {
        return values.get(column) != null;
    }

    /** @throws BadRow where it is empty or longer than that */
    public String text(String column, int longest) throws BadRow {
        String text = textOrNull(column, longest);
        if (text == null) {
            throw bad(column, "is empty", "give a text");
        }
        return text;
    }

    /** Null where there is none, or nothing but spaces. */
    public String textOrNull(String column, int longest) throws BadRow {
        Object value = values.get(column);
        String text = value == null ? "" : value.toString();
        if (text.length() > longest) {
            throw bad(column, "has " + text.length() + " characters", "give at most " + longest);
        }
        if (text.codePoints().anyMatch(each -> Character.isISOControl(each) && each != '\n'
                || Character.getType(each) == Character.SURROGATE)) {
            throw bad(column, "has characters that cannot be shown", "leave them out");
        }
        return text.isBlank() ? null : text;
    }

    /** A count from so much on, to a million. */
    public int count(String column, int least) throws BadRow {
        long value = whole(column, least);
        if (value > MOST_COUNTED) {
            throw bad(column, "is " + value, "give at most " + MOST_COUNTED);
        }
        return (int) value;
    }

    /** A whole number from so much on. */
    public long whole(String column, long least) throws BadRow {
        Long value = wholeOrNull(column, least);
        if (value == null) {
            throw bad(column, "is empty", "give a whole number");
        }
        return value;
    }

    public Long wholeOrNull(String column, long least) throws BadRow {
        if (!has(column)) {
            return null;
        }
        try {
            long value = Long.parseLong(values.get(column).toString().strip());
            if (value < least) {
                throw bad(column, "is " + value, "give " + least + " or more");
            }
            return value;
        } catch (NumberFormatException e) {
            throw bad(column, "is " + shown(column), "give a whole number");
        }
    }

    /** A number; NaN where there is none. */
    public double number(String column) throws BadRow {
        if (!has(column)) {
            return Double.NaN;
        }
        try {
            double value = Double.parseDouble(values.get(column).toString().strip());
            if (!(Math.abs(value) < 1e9)) {
                throw bad(column, "is " + shown(column), "give a number nearer to 0");
            }
            return value;
        } catch (NumberFormatException e) {
            throw bad(column, "is " + shown(column), "give a number, with a point for decimals");
        }
    }

    public boolean flag(String column) throws BadRow {
        Object value = values.get(column);
        if (value instanceof Boolean flag) {
            return flag;
        }
        if ("true".equals(value) || "false".equals(value)) {
            return "true".equals(value);
        }
        throw bad(column, "is " + shown(column), "give true or false");
    }

    /** That a cell makes no sense. */
    public BadRow bad(String column, String what, String remedy) {
        return new BadRow(where + ", " + column + ": " + what + "; " + remedy);
    }

    /** What stands in a cell, short enough for an error. */
    public String shown(String column) {
        String text = String.valueOf(values.get(column));
        return text.length() <= LONGEST_SHOWN ? "\"" + text + "\"" : "\"" + text.substring(0, LONGEST_SHOWN) + "…\"";
    }
}
