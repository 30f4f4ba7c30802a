package org.cupbeam.studio.ingest;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/** The newest messages while another host keeps them, for the case that it dies with what it had not kept yet. */
final class Recent {
    static final int MOST = 4_096;
    static final int MOST_BYTES = 4 << 20;

    private final Deque<Message> messages = new ArrayDeque<>();
    private int bytes;

    void add(Message message) {
        messages.add(message);
        bytes += message.payload().length;
        while (messages.size() > MOST || bytes > MOST_BYTES) {
            bytes -= messages.remove().payload().length;
        }
    }

    /** All of them, in the order in which they came; afterwards there are none. */
    List<Message> takeAll() {
        List<Message> all = new ArrayList<>(messages);
        messages.clear();
        bytes = 0;
        return all;
    }
}
