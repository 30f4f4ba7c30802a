package org.cupbeam.event;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.function.Predicate;
import org.cupbeam.drill.Worded;

/**
 * One JSON object being read. Keys that are not asked for are passed over, so that a later version may add some; an
 * optional key may be absent or null. Whatever does not fit is refused with its path.
 */
final class Fields {
    /** Nothing on a green is further off, faster or more; what is would spoil every mean that it came into. */
    private static final double LARGEST = 1e9;

    private final String at;
    private final Map<String, Object> map;

    Fields(String at, Map<String, Object> map) {
        this.at = at;
        this.map = map;
    }

    String path(String key) {
        return at.isEmpty() ? key : at + "." + key;
    }

    boolean has(String key) {
        return map.get(key) != null;
    }

    /** A text of 1 to {@code max} characters, none of them a control character or half a surrogate pair. */
    String text(String key, int max) throws BadMessage {
        return checked(path(key), required(key), max);
    }

    String textOrNull(String key, int max) throws BadMessage {
        return has(key) ? text(key, max) : null;
    }

    /** A text that a rule of its own holds for. */
    String text(String key, Predicate<String> rule, String inWords) throws BadMessage {
        String text = text(key, 256);
        if (!rule.test(text)) {
            throw bad(key, "is \"" + text + "\"", "give " + inWords);
        }
        return text;
    }

    <E extends Enum<E> & Worded> E word(String key, Class<E> type) throws BadMessage {
        E found = required(key) instanceof String word ? Words.find(type, word) : null;
        if (found == null) {
            throw bad(key, "is " + shown(map.get(key)), "give one of " + Words.all(type));
        }
        return found;
    }

    <E extends Enum<E> & Worded> E wordOrNull(String key, Class<E> type) throws BadMessage {
        return has(key) ? word(key, type) : null;
    }

    boolean flag(String key) throws BadMessage {
        if (required(key) instanceof Boolean flag) {
            return flag;
        }
        throw bad(key, "is " + shown(map.get(key)), "give true or false");
    }

    double number(String key) throws BadMessage {
        return number(path(key), required(key));
    }

    double numberOrNaN(String key) throws BadMessage {
        return has(key) ? number(key) : Double.NaN;
    }

    /** A number no smaller than {@code min} and no larger than {@code max}. */
    double number(String key, double min, double max) throws BadMessage {
        double value = number(key);
        if (value < min || value > max) {
            throw bad(key, "is " + value, "give " + min + " to " + max);
        }
        return value;
    }

    long whole(String key, long min, long max) throws BadMessage {
        if (required(key) instanceof Number number) {
            long value = number.longValue();
            boolean exact = number instanceof Long || (double) value == number.doubleValue();
            if (exact && value >= min && value <= max) {
                return value;
            }
        }
        throw bad(key, "is " + shown(map.get(key)), "give a whole number, " + min + " to " + max);
    }

    int count(String key, int min) throws BadMessage {
        return (int) whole(key, min, 1_000_000);
    }

    long sequence(String key) throws BadMessage {
        long value = required(key) instanceof String text ? Sequence.parse(text) : -1;
        if (value < 0) {
            throw bad(key, "is " + shown(map.get(key)), "give 16 digits");
        }
        return value;
    }

    OptionalLong sequenceIfThere(String key) throws BadMessage {
        return has(key) ? OptionalLong.of(sequence(key)) : OptionalLong.empty();
    }

    Instant time(String key) throws BadMessage {
        String text = text(key, 64);
        try {
            OffsetDateTime time = OffsetDateTime.parse(text);
            if (time.getYear() >= 0 && time.getYear() <= 9999) {
                return time.toInstant();
            }
        } catch (DateTimeException e) {
            // Told below.
        }
        throw bad(key, "is \"" + text + "\"", "give an RFC 3339 time, as 2026-11-25T06:00:00Z");
    }

    Fields object(String key) throws BadMessage {
        return asObject(path(key), required(key));
    }

    Fields objectOrNull(String key) throws BadMessage {
        return has(key) ? object(key) : null;
    }

    List<Fields> objects(String key, int max) throws BadMessage {
        List<Fields> objects = new ArrayList<>();
        for (Object each : list(key, max)) {
            objects.add(asObject(path(key) + "[" + objects.size() + "]", each));
        }
        return objects;
    }

    List<String> texts(String key, int max, int maxLength) throws BadMessage {
        List<String> texts = new ArrayList<>();
        for (Object each : list(key, max)) {
            texts.add(checked(path(key) + "[" + texts.size() + "]", each, maxLength));
        }
        return texts;
    }

    /** Numbers; null among them is NaN. */
    List<Double> numbers(String key, int max) throws BadMessage {
        List<Double> numbers = new ArrayList<>();
        for (Object each : list(key, max)) {
            numbers.add(each == null ? Double.NaN : number(path(key) + "[" + numbers.size() + "]", each));
        }
        return numbers;
    }

    BadMessage bad(String key, String what, String remedy) {
        return new BadMessage(path(key), what, remedy);
    }

    /** Something wrong with the whole object. */
    BadMessage bad(String what, String remedy) {
        return new BadMessage(at, what, remedy);
    }

    private List<?> list(String key, int max) throws BadMessage {
        if (!(required(key) instanceof List<?> list)) {
            throw bad(key, "is " + shown(map.get(key)), "give a list");
        }
        if (list.size() > max) {
            throw bad(key, "has " + list.size() + " entries", "give at most " + max);
        }
        return list;
    }

    private Object required(String key) throws BadMessage {
        Object value = map.get(key);
        if (value == null) {
            throw bad(key, "is missing", "it has to be there");
        }
        return value;
    }

    @SuppressWarnings("unchecked") // the reader makes no other kind of map
    private static Fields asObject(String where, Object value) throws BadMessage {
        if (value instanceof Map<?, ?> object) {
            return new Fields(where, (Map<String, Object>) object);
        }
        throw new BadMessage(where, "is " + shown(value), "give an object");
    }

    private static double number(String where, Object value) throws BadMessage {
        if (value instanceof Number number && Math.abs(number.doubleValue()) <= LARGEST) {
            return number.doubleValue();
        }
        throw new BadMessage(where, "is " + shown(value), value instanceof Number number && Double.isFinite(number.doubleValue())
                ? "give a number nearer to 0 than a thousand million" : "give a number");
    }

    private static String checked(String where, Object value, int max) throws BadMessage {
        if (!(value instanceof String text)) {
            throw new BadMessage(where, "is " + shown(value), "give a text");
        }
        if (text.isBlank() || text.codePointCount(0, text.length()) > max) {
            throw new BadMessage(where, "has " + text.length() + " characters", "give 1 to " + max + ", not all blank");
        }
        if (text.codePoints().anyMatch(c -> Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE)) {
            throw new BadMessage(where, "holds a control character or half a character", "leave it out");
        }
        return text;
    }

    private static String shown(Object value) {
        if (value instanceof Map) {
            return "an object";
        }
        if (value instanceof List) {
            return "a list";
        }
        String text = String.valueOf(value);
        return value instanceof String ? "\"" + text.substring(0, Math.min(40, text.length())) + "\"" : text;
    }
}
