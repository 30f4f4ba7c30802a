package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.cupbeam.event.Answer;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Samples;
import org.cupbeam.event.Stored;
import org.cupbeam.event.StoredJson;
import org.cupbeam.event.Topics;
import org.cupbeam.fuzz.Target;

/** Messages as they come to a lane, the first byte choosing the topic: whatever is answered can be sent and read. */
public final class IncomingTarget implements Target {
    private static final Topics TOPICS = new Topics("north", "bay-3");

    private final FakeOutbox outbox = new FakeOutbox();
    private final Post post = new Post();
    private final Incoming incoming = new Incoming(TOPICS, outbox, command -> command.id().length() % 2 == 0, post);

    public IncomingTarget() {
        outbox.last = 50;
    }

    @Override
    public String name() {
        return "incoming";
    }

    @Override
    public List<byte[]> seeds() {
        return Stream.of(Samples.commands().stream().map(each -> under(0, CommandJson.encode(each))),
                Samples.healths().stream().map(each -> under(1, HealthJson.encode(each))),
                Stream.of(under(2, StoredJson.encode(new Stored("7f3c9a", 41))),
                        under(2, StoredJson.encode(new Stored(FakeOutbox.BEFORE, 7))))).flatMap(each -> each).toList();
    }

    private static byte[] under(int topic, byte[] payload) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.write(topic);
        all.writeBytes(payload);
        return all.toByteArray();
    }

    @Override
    public List<String> words() {
        return List.of("\"command\":\"miss\"", "\"𝄞𝄞𝄞𝄞𝄞𝄞𝄞𝄞\"", "\"id\":\"c-1\"", "\"players\":[", "\"what\":", "\"expect\":", "\"journal\":",
                "\"5e11a4\"", "\"sequence\":\"0000000000000051\"", "\"lost\"", "\"online\"", "\"\\u0007\"", "{\"a\":");
    }

    @Override
    public String take(byte[] input) throws BadMessage {
        long refusedBefore = incoming.refused();
        int topic = input.length == 0 ? 3 : Math.floorMod(input[0], 4);
        byte[] payload = input.length == 0 ? input : Arrays.copyOfRange(input, 1, input.length);
        incoming.message(new Wire.Message(List.of(TOPICS.command(), TOPICS.health(), TOPICS.stored(), "some/where").get(topic),
                payload, false));
        assertThat(outbox.stored).isLessThanOrEqualTo(outbox.last);
        StringBuilder said = new StringBuilder();
        for (Answer each = post.takeAnswer(); each != null; each = post.takeAnswer()) {
            assertThat(CommandJson.decodeAnswer(CommandJson.encode(each))).isEqualTo(each);
            said.append(each.reason());
        }
        return said.length() > 0 ? said.toString() : incoming.refused() > refusedBefore ? "refused, in the log" : ACCEPTED;
    }
}
