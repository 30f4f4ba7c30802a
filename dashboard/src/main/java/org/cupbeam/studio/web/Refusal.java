package org.cupbeam.studio.web;

import java.util.Locale;

/** A request that is not served, and why, in words for whoever made it. Answered as {@code {"error": words}}. */
final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final int status;

    private Refusal(int status, String words) {
        super(words, null, false, false);
        this.status = status;
    }

    /** What was sent makes no sense, or cannot be had. */
    static Refusal badRequest(String words) {
        return new Refusal(400, words);
    }

    static Refusal notFound(String words) {
        return new Refusal(404, words);
    }

    /** It would have been done, had things not moved on, or were it allowed by the rules of play. */
    static Refusal conflict(String words) {
        return new Refusal(409, words);
    }

    static Refusal tooMany(String words) {
        return new Refusal(429, words);
    }

    static Refusal forbidden(String words) {
        return new Refusal(403, words);
    }

    /** Somebody else, who is needed for it, does not answer. */
    static Refusal noAnswer(String words) {
        return new Refusal(504, words);
    }

    /** Words of a room below as a sentence. */
    static String sentence(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + (words.endsWith(".") ? "" : ".");
    }

    int status() {
        return status;
    }

    byte[] json() {
        return Json.bytes(new Said(getMessage()));
    }

    private record Said(String error) {
    }
}
