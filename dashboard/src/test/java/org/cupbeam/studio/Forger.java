package org.cupbeam.studio;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.cupbeam.event.Command;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Source;
import org.cupbeam.event.Stored;
import org.cupbeam.event.StoredJson;
import org.eclipse.paho.client.mqttv3.MqttException;

/** Says at a broker whatever could be taken for somebody else's words, in the name of a player called Mallory. */
final class Forger {
    static final String NAME = "Mallory";
    private final Wire wire;
    private final String studio;

    Forger(Wire wire, String studio) {
        this.wire = wire;
        this.studio = studio;
    }

    /** An event of a lane, in words of ours. */
    String event(String lane, String journal, long sequence, String player) {
        Event whole = new ScriptedLane(lane, journal).starts("r-" + sequence, null, player, 1);
        return text(EventJson.encode(new Event(new Source(studio, lane, journal), sequence, whole.time(), whole.data())));
    }

    void say(String topic, String words) throws MqttException {
        wire.say(topic, words.getBytes(StandardCharsets.UTF_8), false);
    }

    void sayForGood(String topic, byte[] words) throws MqttException {
        wire.say(topic, words, true);
    }

    void command(String lane) throws MqttException {
        Command.Start start = new Command.Start(ScriptedLane.LADDER, List.of(NAME), ScriptedLane.TAGS);
        sayForGood(topic(lane, "command"), CommandJson.encode(new Command("forged", NAME, OptionalLong.empty(), start)));
    }

    void stored(String lane, String journal, long upTo) throws MqttException {
        sayForGood(topic(lane, "stored"), StoredJson.encode(new Stored(journal, upTo)));
    }

    /** Messages of a lane's own that make no sense, each in another way. */
    void nonsense(String lane) throws MqttException {
        String good = event(lane, "j-nonsense", 1, NAME);
        List<String> wrong = new ArrayList<>(List.of("", "{}", "[", "null", "[".repeat(60_000), good.substring(1),
                good.replace("\"specversion\":\"1.0\"", "\"specversion\":\"2.0\""), good.replace("\"specversion\":\"1.0\",", ""),
                good.replace("0000000000000001", "-1"), good.replace("0000000000000001", "0000000000000000"),
                good.replace("0000000000000001", "1e400"), good.replace("\"source\"", "\"sauce\""),
                good.replace("/studio/" + studio, "/studio/another"), good.replace("/journal/j-nonsense", "/journal/../../x")));
        for (String each : wrong) {
            say(topic(lane, "event"), each);
        }
        sayForGood(topic(lane, "score"), ScoreJson.encode(Scenes.duel(false)));
    }

    /** So many messages as large as a broker lets through, each another. */
    void flood(String lane, int messages) throws MqttException {
        for (int i = 0; i < messages; i++) {
            say(topic(lane, "event"), event(lane, "j-flood", i + 2, NAME) + " ".repeat(60_000));
        }
    }

    String topic(String lane, String kind) {
        return "cupbeam/" + studio + "/" + lane + "/" + kind;
    }

    private static String text(byte[] json) {
        return new String(json, StandardCharsets.UTF_8);
    }
}
