package org.cupbeam.studio.bench;

import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ScriptedLane;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** What the lanes of a filled store last said, left at the broker for the host to hear. They say nothing more. */
final class LanesHeard {
    private LanesHeard() {
    }

    static void at(String brokerUri, AskedStore store) throws MqttException {
        MqttClient client = new MqttClient(brokerUri, "lanes", new MemoryPersistence());
        MqttConnectOptions options = new MqttConnectOptions();
        options.setMaxInflight(1_000); // Paho counts what is acknowledged as under way for a moment longer
        client.connect(options);
        for (int i = 0; i < store.found().lanes().size(); i++) {
            Topics topics = new Topics(store.found().studio(), store.found().lanes().get(i));
            client.publish(topics.score(), ScoreJson.encode(score(topics)), 1, true);
            client.publish(topics.health(), HealthJson.encode(new Health(Health.State.ONLINE, 1, "boot", new Health.Report(
                    store.journals().get(i), "bench", Instant.now(), Stamp.Clock.SYNCHRONISED, 0, 0, List.of(), List.of()))),
                    1, true);
        }
        client.disconnect();
        client.close();
    }

    private static Score score(Topics topics) {
        Score.Player player = new Score.Player("Player", "run", 1, 914.4, 0, 0, 0, Double.NaN, 6, OptionalInt.empty(), 1, null,
                List.of());
        return new Score(topics.studio(), topics.lane(), 1, Score.State.PLAYING, ScriptedLane.LADDER, 914.4, ScriptedLane.TAGS,
                null, null, OptionalInt.of(0), List.of(player), null, ScriptedLane.GREEN, List.of(), Instant.now());
    }
}
