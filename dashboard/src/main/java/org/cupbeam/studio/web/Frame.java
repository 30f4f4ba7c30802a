package org.cupbeam.studio.web;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** A server-sent event, as bytes (WHATWG HTML, "Server-sent events": id, event and data lines, a blank line). */
final class Frame {
    private Frame() {
    }

    /** The first thing that is said: how soon to come back after a loss. It also opens the stream at once. */
    static byte[] hello() {
        return "retry: 1500\n\n".getBytes(StandardCharsets.US_ASCII);
    }

    /** @param json one line of JSON */
    static byte[] of(String id, String event, byte[] json) {
        byte[] head = ("id: " + id + "\nevent: " + event + "\ndata: ").getBytes(StandardCharsets.UTF_8);
        ByteArrayOutputStream frame = new ByteArrayOutputStream(head.length + json.length + 2);
        frame.writeBytes(head);
        frame.writeBytes(json);
        frame.write('\n');
        frame.write('\n');
        return frame.toByteArray();
    }
}
