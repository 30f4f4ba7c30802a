package org.cupbeam.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RubbishTest {
    private static final String EVENT = text(EventJson.encode(Samples.events().get(0)));
    private static final String COMMAND = text(CommandJson.encode(Samples.commands().get(0)));

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '^', textBlock = """
            "specversion":"1.0"              | "specversion":"0.3"        | specversion: is "0.3"; give 1.0
            /studio/north/                   | /studio/North/             | source: is "/studio/North/lane/bay-3
            "id":"0000000000000042"          | "id":"42"                  | id: is "42"; give 16 digits
            "sequence":"0000000000000042"    | "sequence":"0000000000000043" | sequence: is not the id
            "time":"2026-11-25               | "time":"2026-13-25         | time: is "2026-13-25
            "monotonic_ns":5027900000        | "monotonic_ns":-1          | data.monotonic_ns: is -1; give a whole number, 0 to
            "monotonic_ns":5027900000        | "monotonic_ns":1.5         | data.monotonic_ns: is 1.5; give a whole number
            "clock":"unsynchronised"         | "clock":"wrong"            | data.clock: is "wrong"; give one of synchronised, unsynchronised
            "outcome":"missed"               | "outcome":7                | data.attempt.outcome: is 7; give one of holed, missed
            "finish_mm":1597.8               | "finish_mm":"far"          | data.attempt.finish_mm: is "far"; give a number
            "finish_mm":1597.8               | "finish_mm":1e999          | data.attempt.finish_mm: is Infinity; give a number
            "finish_mm":1597.8               | "finish_mm":-1e10          | data.attempt.finish_mm: is -1.0E10; give a number nearer to 0
            "time":"2026-11-25               | "time":"+999999999-12-31   | time: is "+999999999-12-31T06:00:00.123456789Z"; give an RFC 3339
            [1580,1615.6]                    | [1580]                     | data.attempt.finish_between_mm: has 1 entries; give two
            [1580,1615.6]                    | [1580,{}]                  | data.attempt.finish_between_mm[1]: is an object; give a number
            "player":"Ana"                   | "player":" "               | data.play.player: has 1 characters; give 1 to 40
            "player":"Ana"                   | "player":"A\\u0007"        | data.play.player: holds a control character
            "player":"Ana"                   | "player":"A\\ud800"        | data.play.player: holds a control character or half a character
            "player":"Ana",                  | ^^                         | data.play.player: is missing; it has to be there
            "station":3                      | "station":0                | data.play.station: is 0; give a whole number, 1 to
            "rim":true                       | "rim":"yes"                | data.attempt.rim: is "yes"; give true or false
            "play":{                         | "play":{"":1,"":2,         | a key without a name: is there twice in one object
            "play":{                         | "play":7,"q":{             | data.play: is 7; give an object
            "play":{                         | "play":{"run":"r","run":"r", | run: is there twice in one object
            """)
    void anEventThatMakesNoSenseIsRefusedWithWhereAndWhatAndWhatWouldDo(String part, String spoiled, String reason) {
        assertThat(EVENT).contains(part);
        String bad = EVENT.replace(part, spoiled == null ? "" : spoiled);
        assertThatThrownBy(() -> EventJson.decode(bytes(bad))).isInstanceOf(BadMessage.class)
                .hasMessageStartingWith(reason);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '^', textBlock = """
            "command":"start"                | "command":"dance"          | command: is "dance"; give one of start, take-back, miss, void, pass, end
            ["Ana","Bo"]                     | ["Ana","Ana"]              | players: is [Ana, Ana]; give 1 to 8 names, none twice
            ["Ana","Bo"]                     | []                         | players: is []; give 1 to 8 names
            ["Ana","Bo"]                     | ["1","2","3","4","5","6","7","8","9"] | players: has 9 entries; give at most 8
            "supply":"every-station"         | "supply":"plenty"          | drill.balls.supply: is "plenty"; give one of every-station, whole-run
            "first_mm":914.4                 | "first_mm":0               | drill: it cannot be played: a station stands 100.0 to 50000.0 mm from the hole, not 0.0; give a drill
            "first_mm":914.4                 | "at_mm":[]                 | drill: it cannot be played: a drill has 1 to 100 stations, not 0
            "first_mm":914.4                 | "at_mm":[-5]               | drill: it cannot be played: a station stands
            "by":"Jo"                        | "expect":7,"by":"Jo"       | expect: is 7; give 16 digits
            """)
    void aCommandThatMakesNoSenseIsRefusedUnderItsOwnId(String part, String spoiled, String reason) {
        assertThat(COMMAND).contains(part);
        assertThatThrownBy(() -> CommandJson.decode(bytes(COMMAND.replace(part, spoiled))))
                .isInstanceOfSatisfying(BadMessage.class, bad -> assertThat(bad.id()).isEqualTo("c-1"))
                .hasMessageStartingWith(reason);
    }

    @Test
    void whatIsNotOneObjectOfJsonIsRefused() {
        for (String each : List.of("", " ", "[]", "7", "{", "{}{}", "{\"a\":}", "nonsense", "\u0000", "[".repeat(5000),
                "{\"a\":".repeat(20) + "1" + "}".repeat(20))) {
            assertThatThrownBy(() -> EventJson.decode(bytes(each))).isInstanceOf(BadMessage.class)
                    .hasMessageMatching("(?s).+: .+; .+");
        }
        assertThatThrownBy(() -> EventJson.decode(new byte[] {'{', '"', (byte) 0xC3, '"'}))
                .isInstanceOf(BadMessage.class).hasMessageStartingWith("payload: is not UTF-8");
    }

    @Test
    void whatIsTooLargeIsRefusedUnread() {
        byte[] large = bytes("x".repeat(JsonIn.LIMIT_BYTES + 1));
        assertThatThrownBy(() -> EventJson.decode(large)).isInstanceOf(BadMessage.class)
                .hasMessage("payload: 65537 bytes; at most 65536 are read");
    }

    @Test
    void aReasonIsShownShortAndHarmlessWhateverWasSent() {
        assertThatThrownBy(() -> CommandJson.decode(bytes(COMMAND.replace("\"start\"", "\"da\\u0007nce\""))))
                .hasMessage("command: is \"da\\u0007nce\"; give one of start, take-back, miss, void, pass, end, test-rolls");
        assertThatThrownBy(() -> CommandJson.decode(bytes(COMMAND.replace("\"start\"", "\"" + "x".repeat(39) + "\ud83d\ude00\""))))
                .hasMessageStartingWith("command: is \"" + "x".repeat(39)).hasMessageNotContaining("\ud83d;")
                .satisfies(e -> assertThat(e.getMessage().codePoints()).noneMatch(c ->
                        Character.getType(c) == Character.SURROGATE));
        String key = "k\\u001b" + "y".repeat(30_000);
        assertThatThrownBy(() -> EventJson.decode(bytes("{\"" + key + "\":1,\"" + key + "\":1}")))
                .hasMessageMatching("k\\\\u001By{93}…: is there twice in one object; say it once");
    }

    /** Written out they have more digits than a reader takes: the lane could not have read its own journal again. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-300, Double.MIN_VALUE, 1.25e-40, 9_999.999999999998})
    void aNumberOfManyDigitsReadsBack(double limitMm) throws BadMessage {
        Drill drill = new Drill("d", Samples.LADDER.stations(), 6, Supply.EVERY_STATION, 1, OptionalDouble.of(limitMm),
                Penalty.NONE, Turns.STATION);
        assertThat(DrillJson.read(DrillJson.text(drill))).isEqualTo(drill);
    }

    @Test
    void anEventOfAnUnknownTypeIsKeptButNotUnderstood() throws BadMessage {
        Event event = EventJson.decode(bytes(EVENT.replace("attempt.v1", "attempt.v2")));
        assertThat(event.data()).isEqualTo(new Data.Other(Samples.STAMP, "org.cupbeam.attempt.v2"));
    }

    @Test
    void theEnvelopeIsReadableEvenWhereTheDataAreNot() throws BadMessage {
        assertThat(EventJson.envelope(bytes(EVENT.replace("\"outcome\":\"missed\"", "\"outcome\":7"))))
                .isEqualTo(new EventJson.Envelope(Samples.SOURCE, 42, Samples.TIME, Data.ATTEMPT));
    }

    @Property(tries = 4000)
    void noBytesWhateverMakeAReaderFailOtherwise(@ForAll @IntRange(max = 23) int which, @ForAll long seed) {
        List<byte[]> all = new ArrayList<>();
        Samples.events().forEach(each -> all.add(EventJson.encode(each)));
        Samples.scores().forEach(each -> all.add(ScoreJson.encode(each)));
        Samples.healths().forEach(each -> all.add(HealthJson.encode(each)));
        Samples.commands().forEach(each -> all.add(CommandJson.encode(each)));
        byte[] spoiled = spoiled(all.get(which % all.size()), new Random(seed));
        reads(() -> EventJson.encode(EventJson.decode(spoiled)));
        reads(() -> ScoreJson.encode(ScoreJson.decode(spoiled)));
        reads(() -> HealthJson.encode(HealthJson.decode(spoiled)));
        reads(() -> CommandJson.encode(CommandJson.decode(spoiled)));
        reads(() -> CommandJson.encode(CommandJson.decodeAnswer(spoiled)));
        reads(() -> StoredJson.encode(StoredJson.decode(spoiled)));
    }

    private interface Reader {
        byte[] read() throws BadMessage;
    }

    private static void reads(Reader reader) {
        try {
            assertThat(reader.read()).isNotEmpty();
        } catch (BadMessage e) {
            assertThat(e.getMessage()).matches("(?s).+: .+; .+");
        }
    }

    private static byte[] spoiled(byte[] payload, Random random) {
        byte[] spoiled = payload.clone();
        String palette = "{}[]\",:0123456789.-eE\\untrfals \u00e9";
        for (int i = random.nextInt(4); i >= 0; i--) {
            int at = random.nextInt(spoiled.length);
            spoiled[at] = random.nextInt(4) == 0 ? (byte) random.nextInt()
                    : (byte) palette.charAt(random.nextInt(palette.length()));
        }
        return random.nextInt(8) > 0 ? spoiled : Arrays.copyOf(spoiled, random.nextInt(spoiled.length));
    }

    private static String text(byte[] payload) {
        return new String(payload, StandardCharsets.UTF_8);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
