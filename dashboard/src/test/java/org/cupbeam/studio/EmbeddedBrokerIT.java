package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.BindException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class EmbeddedBrokerIT {
    @Test
    void servesOnTheSamePortAfterItWasStartedAnew() throws Exception {
        try (EmbeddedBroker broker = new EmbeddedBroker(0)) {
            broker.startAnew();
            try (Wire wire = new Wire(broker.uri()).hear("t")) {
                wire.say("t", "still here".getBytes(StandardCharsets.UTF_8), false);
                assertThat(wire.heard("t still here", 5_000)).isTrue();
            }
        }
    }

    @Test
    void carriesTheLargestMessageThatIsRead() throws Exception {
        try (EmbeddedBroker broker = new EmbeddedBroker(0);
             Wire from = new Wire(broker.uri());
             Wire to = new Wire(broker.uri()).hear("t")) {
            from.say("t", "x".repeat(64 * 1024).getBytes(StandardCharsets.UTF_8), false);
            assertThat(to.heard("x", 5_000)).isTrue();
        }
    }

    @Test
    void saysThatItsPortIsInUse() throws Exception {
        try (EmbeddedBroker broker = new EmbeddedBroker(0)) {
            int port = Integer.parseInt(broker.uri().substring(broker.uri().lastIndexOf(':') + 1));
            assertThatThrownBy(() -> new EmbeddedBroker(port)).isInstanceOf(BindException.class)
                    .hasMessageContaining(Integer.toString(port));
        }
    }

    @Test
    void leavesNothingOnDisk() throws Exception {
        List<Path> before = files();
        try (EmbeddedBroker broker = new EmbeddedBroker(0); Wire wire = new Wire(broker.uri()).hear("t")) {
            wire.say("t", new byte[] {1}, true);
        }
        assertThat(files()).isEqualTo(before);
    }

    private static List<Path> files() throws Exception {
        try (Stream<Path> here = Files.list(Path.of("."))) {
            return here.sorted().toList();
        }
    }
}
