package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class RecentTest {
    private final Recent recent = new Recent();

    @Test
    void keepsTheNewestByNumber() {
        for (int i = 0; i <= Recent.MOST; i++) {
            recent.add(new Message("t" + i, new byte[1], 1));
        }
        assertThat(recent.takeAll()).hasSize(Recent.MOST).last().extracting(Message::topic).isEqualTo("t" + Recent.MOST);
        assertThat(recent.takeAll()).isEmpty();
    }

    @Test
    void keepsTheNewestByBytes() {
        int each = Message.LIMIT_BYTES;
        for (int i = 0; i < 3 * Recent.MOST_BYTES / each; i++) {
            recent.add(new Message("t", new byte[each], each));
        }
        assertThat(recent.takeAll()).hasSize(Recent.MOST_BYTES / each);
    }
}
