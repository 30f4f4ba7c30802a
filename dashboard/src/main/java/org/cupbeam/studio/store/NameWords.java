package org.cupbeam.studio.store;

import java.text.Normalizer;
import java.util.Collection;
import java.util.Comparator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Names as words within a text, whatever their case and spacing: whole ones, so that Ada is not found in Adam. */
final class NameWords {
    private static final Pattern ESCAPE = Pattern.compile("\\\\u([0-9a-fA-F]{4})");

    private final Pattern pattern;

    /** @param keys of names, as {@link NameKey} makes them; at least one */
    NameWords(Collection<String> keys) {
        String any = keys.stream().sorted(Comparator.comparingInt(String::length).reversed()).map(NameWords::spaced)
                .collect(Collectors.joining("|"));
        pattern = Pattern.compile("(?<![\\p{L}\\p{N}])(?:" + any + ")(?![\\p{L}\\p{N}])",
                Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    }

    /** Whether one stands in the text, or in what the text's JSON escapes stand for; false for null. */
    boolean in(String textOrNull) {
        return textOrNull != null && (pattern.matcher(plain(textOrNull)).find()
                || pattern.matcher(plain(unescaped(textOrNull))).find());
    }

    /** The text with something else in their place; as it is where none stands in it. */
    String replaced(String textOrNull, String by) {
        return in(textOrNull) ? pattern.matcher(plain(unescaped(textOrNull))).replaceAll(Matcher.quoteReplacement(by))
                : textOrNull;
    }

    private static String plain(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFKC);
    }

    private static String unescaped(String text) {
        return ESCAPE.matcher(text).replaceAll(match -> {
            char letter = (char) Integer.parseInt(match.group(1), 16);
            return letter < ' ' || letter == '"' || letter == '\\' || letter == '$' ? match.group().replace("\\", "\\\\")
                    : String.valueOf(letter);
        });
    }

    private static String spaced(String key) {
        return Stream.of(key.split(" ")).map(Pattern::quote).collect(Collectors.joining("\\s+"));
    }
}
