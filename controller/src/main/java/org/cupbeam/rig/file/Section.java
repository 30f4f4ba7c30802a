package org.cupbeam.rig.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One table of a file: gives what it is asked for, and notes what is missing, out of range or not known.
 * After a problem it answers with something harmless, so that the rest of the file can be looked at too; what was read
 * counts only once {@link #throwIfAnyProblem} has returned.
 */
public final class Section {
    private final String kind;
    private final String path;
    private final int line;
    private final TomlTable toml;
    private final Problems problems;
    private final List<String> known = new ArrayList<>();

    Section(String kind, String path, int line, TomlTable toml, Problems problems) {
        this.kind = kind;
        this.path = path;
        this.line = line;
        this.toml = toml;
        this.problems = problems;
    }

    /** Whether a key is there. */
    public boolean has(String key) {
        return toml.contains(List.of(key));
    }

    /** A number that must be there, from {@code min} to {@code max}, both allowed; NaN after a problem. */
    public double number(String key, double min, double max, String remedy) {
        Object value = required(key, remedy);
        return value == null ? Double.NaN : inRange(key, value, min, max, remedy);
    }

    /** A number that may be left out. */
    public double numberOr(String key, double otherwise, double min, double max, String remedy) {
        Object value = optional(key);
        return value == null ? otherwise : inRange(key, value, min, max, remedy);
    }

    /** A list of 1 to {@code most} numbers that must be there; empty after a problem. */
    public List<Double> numbers(String key, int most, double min, double max, String remedy) {
        Object value = required(key, remedy);
        List<Double> numbers = new ArrayList<>();
        if (value instanceof TomlArray array && array.size() >= 1 && array.size() <= most) {
            for (int i = 0; i < array.size(); i++) {
                numbers.add(inRange(key, array.get(i), min, max, remedy));
            }
        } else if (value != null) {
            problem(key, "a list of 1 to " + most + " numbers is wanted, not "
                    + (value instanceof TomlArray array ? "of " + array.size() : kindOf(value)), remedy);
        }
        return numbers;
    }

    /** A whole number that must be there; -1 after a problem. */
    public int whole(String key, int min, int max, String remedy) {
        Object value = required(key, remedy);
        if (value instanceof Long number && number >= min && number <= max) {
            return number.intValue();
        }
        if (value instanceof Long number) {
            problem(key, number + " is out of range", remedy);
        } else if (value != null) {
            problem(key, "a whole number is wanted, not " + kindOf(value), remedy);
        }
        return -1;
    }

    /** Text that must be there; null after a problem. */
    public String text(String key, String remedy) {
        Object value = required(key, remedy);
        if (value instanceof String text) {
            return text;
        }
        if (value != null) {
            problem(key, "text in quotes is wanted, not " + kindOf(value), remedy);
        }
        return null;
    }

    /** One of an enum's words that must be there; {@code otherwise} after a problem. */
    public <E extends Enum<E>> E word(String key, E otherwise) {
        return required(key, choice(otherwise)) == null ? otherwise : wordOr(key, otherwise);
    }

    /** One of an enum's words, its constants in lower case with hyphens, that may be left out. */
    public <E extends Enum<E>> E wordOr(String key, E otherwise) {
        Object value = optional(key);
        if (value == null) {
            return otherwise;
        }
        for (E constant : otherwise.getDeclaringClass().getEnumConstants()) {
            if (word(constant).equals(value)) {
                return constant;
            }
        }
        problem(key, (value instanceof String text ? '"' + text + '"' : kindOf(value)) + " is not known here",
                choice(otherwise));
        return otherwise;
    }

    /** A table that must be there; null after a problem. */
    public Section table(String key, String remedy) {
        return required(key, remedy) == null ? null : tableOrNull(key);
    }

    /** A table that may be left out; null then, or after a problem. */
    public Section tableOrNull(String key) {
        Object value = optional(key);
        if (value instanceof TomlTable table) {
            return new Section(kind, pathOf(key), lineOf(key), table, problems);
        }
        if (value != null) {
            problem(key, "a table is wanted, not " + kindOf(value), "write [" + pathOf(key) + "] once, its keys below");
        }
        return null;
    }

    /** A list of tables that may be left out. */
    public List<Section> tables(String key) {
        List<Section> tables = new ArrayList<>();
        Object value = optional(key);
        String remedy = "write [[" + pathOf(key) + "]] above each one's keys";
        if (value instanceof TomlArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.get(i) instanceof TomlTable table) {
                    tables.add(new Section(kind, pathOf(key), array.inputPositionOf(i).line(), table, problems));
                } else {
                    problem(key, "a list of tables is wanted, not " + kindOf(array.get(i)), remedy);
                }
            }
        } else if (value != null) {
            problem(key, "a list of tables is wanted, not " + kindOf(value), remedy);
        }
        return tables;
    }

    /** Notes every key that nobody has asked for. */
    public void nothingElse() {
        for (String key : toml.keySet()) {
            if (!known.contains(key)) {
                problem(key, "not a key of " + (path.isEmpty() ? kind : "[" + path + "]"),
                        "known here: " + String.join(", ", known));
            }
        }
    }

    /** Notes something wrong with a key. */
    public void problem(String key, String wrong, String remedy) {
        problems.add(lineOf(key), pathOf(key), wrong, remedy);
    }

    /** Ends the reading where anything in the whole file was wrong. */
    public void throwIfAnyProblem() throws BadFileException {
        problems.throwIfAny();
    }

    /** A key's line; the table's where the key is not there. */
    public int lineOf(String key) {
        TomlPosition at = has(key) ? toml.inputPositionOf(List.of(key)) : null;
        return at == null ? line : at.line();
    }

    private Object optional(String key) {
        if (!known.contains(key)) {
            known.add(key);
        }
        return toml.get(List.of(key));
    }

    private Object required(String key, String remedy) {
        Object value = optional(key);
        if (value == null) {
            problems.add(line, pathOf(key), "missing", remedy);
        }
        return value;
    }

    private double inRange(String key, Object value, double min, double max, String remedy) {
        if (!(value instanceof Long) && !(value instanceof Double)) {
            problem(key, "a number is wanted, not " + kindOf(value), remedy);
            return Double.NaN;
        }
        double number = ((Number) value).doubleValue();
        if (number >= min && number <= max) {
            return number;
        }
        problem(key, value + " is out of range", remedy);
        return Double.NaN;
    }

    private String pathOf(String key) {
        return path.isEmpty() ? key : path + "." + key;
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static <E extends Enum<E>> String choice(E any) {
        return Arrays.stream(any.getDeclaringClass().getEnumConstants()).map(each -> '"' + word(each) + '"')
                .collect(Collectors.joining(" or ")) + " would do";
    }

    private static String kindOf(Object value) {
        if (value instanceof String) {
            return "text";
        }
        if (value instanceof Boolean || value instanceof Number) {
            return value.toString();
        }
        return value instanceof TomlTable ? "a table" : value instanceof TomlArray ? "a list" : "a date or time";
    }
}
