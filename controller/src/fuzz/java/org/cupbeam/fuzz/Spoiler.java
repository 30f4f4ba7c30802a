package org.cupbeam.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Spoils inputs: a few small changes, or a large one. The same dice make the same of the same. */
final class Spoiler {
    private static final List<String> ODD = List.of("0", "-1", "1e999", "-1e999", "1e-320", "NaN", "9223372036854775808",
            "-9223372036854775809", "2147483648", "0.1e1", "\0", "\u0007", "\u001B[31m", "\uFEFF", "\uFFFF", "\\ud800",
            "\\udc00", "\\U0010FFFF", "\\", "\"", "'", "\"\"\"", "\r\n", "\n", "\r", "\u2028", "\u0085", "%00", "../", "{",
            "}", "[", "]", "[[", ",", ":", "=", ".", "null", "true", "\t", "ü", "𝄞", "+999999999-12-31T23:59:59Z", "$", "#");

    private final Random dice;
    private final List<String> words;
    private final int longest;

    Spoiler(Random dice, List<String> words, int longest) {
        this.dice = dice;
        this.words = words;
        this.longest = longest;
    }

    /** @param other whose parts may be put in */
    byte[] spoil(byte[] input, byte[] other) {
        byte[] spoilt = input;
        for (int changes = 1 + dice.nextInt(dice.nextInt(4) == 0 ? 12 : 3); changes > 0; changes--) {
            spoilt = change(spoilt, other);
        }
        return spoilt.length > longest ? Arrays.copyOf(spoilt, longest) : spoilt;
    }

    private byte[] change(byte[] input, byte[] other) {
        int at = dice.nextInt(input.length + 1);
        int run = Math.min(input.length - at, dice.nextInt(1 + (1 << dice.nextInt(8))));
        return switch (dice.nextInt(9)) {
            case 0 -> joined(input, at, new byte[] {(byte) dice.nextInt()}, Math.min(1, input.length - at));
            case 1 -> flipped(input, at);
            case 2 -> joined(input, at, new byte[0], run);
            case 3 -> joined(input, at, word(), dice.nextBoolean() ? 0 : run);
            case 4 -> joined(input, at, word(), wordLength(input, at));
            case 5 -> joined(input, at, part(other), 0);
            case 6 -> joined(input, at, Arrays.copyOfRange(input, at, at + run), 0);
            case 7 -> dice.nextInt(12) == 0 ? repeated(input, at, Math.max(1, run)) : flipped(input, at);
            default -> dice.nextInt(4) == 0 ? Arrays.copyOf(input, at) : joined(input, at, word(), wordLength(input, at));
        };
    }

    private byte[] word() {
        List<String> from = words.isEmpty() || dice.nextInt(3) == 0 ? ODD : words;
        return from.get(dice.nextInt(from.size())).getBytes(StandardCharsets.UTF_8);
    }

    private byte[] flipped(byte[] input, int at) {
        byte[] copy = input.clone();
        if (at < copy.length) {
            copy[at] ^= (byte) (1 << dice.nextInt(8));
        }
        return copy;
    }

    private byte[] part(byte[] other) {
        int from = dice.nextInt(other.length + 1);
        return Arrays.copyOfRange(other, from, from + dice.nextInt(other.length - from + 1));
    }

    /** What nobody writes so often: the same again, up to the longest input that there may be. */
    private byte[] repeated(byte[] input, int at, int length) {
        byte[] once = Arrays.copyOfRange(input, at, Math.min(input.length, at + length));
        int times = once.length == 0 ? 0 : Math.min(1 << dice.nextInt(16), (longest - input.length) / once.length);
        byte[] all = new byte[Math.max(0, times) * once.length];
        for (int i = 0; i < all.length; i++) {
            all[i] = once[i % once.length];
        }
        return joined(input, at, all, 0);
    }

    private static int wordLength(byte[] input, int at) {
        int end = at;
        while (end < input.length && (Character.isLetterOrDigit(input[end]) || input[end] == '.' || input[end] == '_')) {
            end++;
        }
        return end - at;
    }

    private static byte[] joined(byte[] input, int at, byte[] middle, int instead) {
        byte[] joined = new byte[input.length - instead + middle.length];
        System.arraycopy(input, 0, joined, 0, at);
        System.arraycopy(middle, 0, joined, at, middle.length);
        System.arraycopy(input, at + instead, joined, at + middle.length, input.length - at - instead);
        return joined;
    }
}
