package org.cupbeam.event;

import static org.assertj.core.api.Assertions.assertThat;

import io.cloudevents.CloudEvent;
import io.cloudevents.SpecVersion;
import io.cloudevents.core.format.EventFormat;
import io.cloudevents.jackson.JsonFormat;
import org.junit.jupiter.api.Test;

/** Our events against the CloudEvents SDK's own reader and writer (io.cloudevents 4.0.1). */
class CloudEventTest {
    private final EventFormat format = new JsonFormat();

    @Test
    void theSdkReadsOurEvents() {
        for (Event each : Samples.events()) {
            CloudEvent read = format.deserialize(EventJson.encode(each));
            assertThat(read.getSpecVersion()).isEqualTo(SpecVersion.V1);
            assertThat(read.getId()).isEqualTo(Sequence.text(each.sequence()));
            assertThat(read.getSource()).hasToString("/studio/north/lane/bay-3/journal/7f3c9a");
            assertThat(read.getType()).isEqualTo(each.data().type());
            assertThat(read.getExtension("sequence")).isEqualTo(Sequence.text(each.sequence()));
            assertThat(read.getTime().toInstant()).isEqualTo(each.time());
            assertThat(read.getDataContentType()).isEqualTo("application/json");
            assertThat(read.getData()).isNotNull();
        }
    }

    @Test
    void weReadWhatTheSdkWrites() throws BadMessage {
        for (Event each : Samples.events()) {
            byte[] theirs = format.serialize(format.deserialize(EventJson.encode(each)));
            assertThat(EventJson.decode(theirs)).isEqualTo(each);
        }
    }

    @Test
    void theMediaTypeIsTheSdks() {
        assertThat(EventJson.CONTENT_TYPE).isEqualTo(JsonFormat.CONTENT_TYPE);
    }
}
