package org.cupbeam.studio.ingest;

import java.util.Arrays;

/**
 * A message as the broker handed it over, or as it is to go out.
 *
 * @param topic   its topic
 * @param payload its payload; of one that is too large only the beginning
 * @param length  the payload's whole length, bytes
 */
public record Message(String topic, byte[] payload, int length) {
    /** The largest payload that is read, bytes. */
    public static final int LIMIT_BYTES = 64 * 1024;
    private static final int KEPT_OF_TOO_LARGE = 256;

    public static Message of(String topic, byte[] payload) {
        boolean small = payload.length <= LIMIT_BYTES;
        return new Message(topic, small ? payload : Arrays.copyOf(payload, KEPT_OF_TOO_LARGE), payload.length);
    }

    public boolean tooLarge() {
        return length > LIMIT_BYTES;
    }
}
