package org.cupbeam.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Samples;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Stored;
import org.cupbeam.event.StoredJson;

/** Messages of each kind, each given to the reader of each kind; what can be read can be written, and reads as the same. */
public final class MessageTarget implements Target {
    private interface Reader {
        /** Reads, writes, and reads again what was written. @return the first and the second reading */
        List<Object> read(byte[] payload) throws BadMessage;
    }

    private static final List<Reader> READERS = List.of(
            in -> List.of(EventJson.decode(in), EventJson.decode(EventJson.encode(EventJson.decode(in)))),
            in -> List.of(ScoreJson.decode(in), ScoreJson.decode(ScoreJson.encode(ScoreJson.decode(in)))),
            in -> List.of(HealthJson.decode(in), HealthJson.decode(HealthJson.encode(HealthJson.decode(in)))),
            in -> List.of(CommandJson.decode(in), CommandJson.decode(CommandJson.encode(CommandJson.decode(in)))),
            in -> List.of(CommandJson.decodeAnswer(in),
                    CommandJson.decodeAnswer(CommandJson.encode(CommandJson.decodeAnswer(in)))),
            in -> List.of(StoredJson.decode(in), StoredJson.decode(StoredJson.encode(StoredJson.decode(in)))));

    @Override
    public String name() {
        return "message";
    }

    @Override
    public List<byte[]> seeds() {
        return Stream.of(Samples.events().stream().map(EventJson::encode), Samples.scores().stream().map(ScoreJson::encode),
                Samples.healths().stream().map(HealthJson::encode), Samples.commands().stream().map(CommandJson::encode),
                Samples.answers().stream().map(CommandJson::encode),
                Stream.of(StoredJson.encode(new Stored("7f3c9a", 41)))).flatMap(each -> each).toList();
    }

    @Override
    public List<String> words() {
        return List.of("\"command\":\"miss\"", "\"finish_mm\":", "\"id\":\"c-1\"", "\"players\":[", "\"what\":\"ended\"", "\"a\":",
                "\"expect\":\"0000000000000041\"", "\"limit_mm\":1e-300", "\"reason\":\"", "\"\\ud800\"", "\"\\u0000\"", "{\"a\":",
                "[[[[[[[[", "}}}}}}}}", "1e400", "1.7976931348623157e308", "4.9e-324", "0000000000000000", "\"type\":",
                "\"org.cupbeam.run.v1\"", "\"org.cupbeam.clock.v1\"", "\"org.cupbeam.attempt.v1\"", "\"wall\":",
                "\"+999999999-12-31T23:59:59Z\"", "\"-999999999-01-01T00:00:00+18:00\"", "12345678901234567890123456789");
    }

    @Override
    public int longest() {
        return 64 * 1024 + 16;
    }

    @Override
    public String take(byte[] input) {
        StringBuilder said = new StringBuilder();
        for (Reader reader : READERS) {
            try {
                List<Object> readings = reader.read(input);
                assertThat(readings.get(1).getClass()).isEqualTo(readings.get(0).getClass());
            } catch (BadMessage bad) {
                assertThat(bad).hasMessageMatching("(?s).+: .+; .+");
                assertThat(bad.getMessage()).hasSizeLessThan(520);
                said.append(bad.getMessage()).append('\n');
            }
        }
        return said.toString();
    }
}
