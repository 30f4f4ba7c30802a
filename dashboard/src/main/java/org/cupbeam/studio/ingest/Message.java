package org.cupbeam.studio.ingest;

import java.util.Arrays;

/**
 * A message as the broker handed it over, or as it is to go out.
 *
 * @param topic   its topic
 * @param payload its payload; of one that is too large only the beginning
 * @param length  the payload's whole length, bytes
 * @param taken   to be run once it is dealt with for good, where its broker waits for that; until then the broker has it,
 *                and gives it again to the next connection
 */
public record Message(String topic, byte[] payload, int length, Runnable taken) {
    /** The broker takes it for dealt with once it was handed over. */
    public static final Runnable NOBODY_WAITS = () -> { };
    /** The largest payload that is read, bytes. */
    public static final int LIMIT_BYTES = 64 * 1024;
    private static final int KEPT_OF_TOO_LARGE = 256;

    Message(String topic, byte[] payload, int length) {
        this(topic, payload, length, NOBODY_WAITS);
    }

    public static Message of(String topic, byte[] payload) {
        return of(topic, payload, NOBODY_WAITS);
    }

    public static Message of(String topic, byte[] payload, Runnable taken) {
        boolean small = payload.length <= LIMIT_BYTES;
        return new Message(topic, small ? payload : Arrays.copyOf(payload, KEPT_OF_TOO_LARGE), payload.length, taken);
    }

    public boolean tooLarge() {
        return length > LIMIT_BYTES;
    }
}
