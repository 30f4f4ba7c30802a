package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.assertj.core.data.Percentage;
import org.cupbeam.event.Event;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.studio.docs.Tables;
import org.junit.jupiter.api.Test;

/**
 * What many studios come to, on paper: docs/scale.md has the assumptions in a list and what follows from them in a table. Both
 * are read or written here; {@code -Dcupbeam.tables=write} writes the table anew.
 */
class ScalePaperTest {
    private static final Path PAGE = Path.of("..", "docs", "scale.md");
    private static final int DAYS = 350;
    private static final double GB = 1e9;
    /** An event's and a score's JSON, by the encoders of today. */
    private final ScriptedLane lane = new ScriptedLane("lane-1", "7c1d5a9e-4c4e-4a8e-9a55-4f1f0c2b7d11");
    private final String page = read();

    private record Studios(long count, Sums each) {
    }

    /** Of one studio. */
    private record Sums(double lanes, double puttsAYear, double eventsAYear, double messagesAYear, double bridgedBytesAYear,
                        double storedBytesAYear, double eventsPerSAtPeak) {
    }

    @Test
    void thePageSaysWhatFollowsFromItsAssumptions() throws IOException {
        Sums one = sums();
        List<String> lines = new ArrayList<>();
        lines.add("| studios | lanes | putts a year | events a second, all lanes in play | messages a year at the studios' brokers "
                + "| over the bridges, GB a year | in PostgreSQL, GB a year | sites | processors for hosts and databases | money, a studio and year |");
        lines.add("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        for (long count : new long[] {1, 10, 100, 1_000, 10_000}) {
            lines.add(row(new Studios(count, one)));
        }
        Tables.holds(PAGE, "paper", lines);
    }

    /** The bytes that the page counts with are those of the encoders, within a tenth. */
    @Test
    void theBytesAreThoseOfTheEncoders() {
        Event event = lane.misses("run-1-of-a-day", null, "Somebody with a name", 3, 312.5);
        assertThat(given("bytes of an event")).isCloseTo(ScriptedLane.json(event).length, within10Percent());
        assertThat(given("bytes of a score")).isCloseTo(ScoreJson.encode(Scenes.duel(false)).length, within10Percent());
    }

    private Sums sums() {
        double lanes = given("lanes of a studio");
        double putts = lanes * given("hours that a lane is in play, a day") * 60 * given("putts a minute in play") * DAYS;
        double events = putts * given("events for each putt");
        // Each event has its score; both go to the broker once, from there to the host, and over the bridge.
        double bytes = given("bytes of an event") + given("bytes of a score") + 2 * given("bytes around a message");
        return new Sums(lanes, putts, events, events * 2, events * bytes, events * given("bytes of an event in PostgreSQL"),
                lanes * given("putts a minute in play") / 60 * given("events for each putt"));
    }

    private String row(Studios of) {
        Sums one = of.each();
        double sites = Math.ceil(of.count() * one.lanes() / given("lanes of a site"));
        double processors = Math.max(2, Math.ceil(of.count() * one.lanes() / given("lanes for each processor")));
        double money = (processors * given("money for a processor, a month") * 12
                + of.count() * one.storedBytesAYear() / GB * given("copies of the database") * given("money for a GB kept, a month") * 12
                + of.count() * one.bridgedBytesAYear() / GB * given("money for a GB that comes in")) / of.count();
        return "| " + String.join(" | ", number(of.count()), number(of.count() * one.lanes()), number(of.count() * one.puttsAYear()),
                round(of.count() * one.eventsPerSAtPeak()), number(of.count() * one.messagesAYear()),
                round(of.count() * one.bridgedBytesAYear() / GB), round(of.count() * one.storedBytesAYear() / GB), number(sites),
                number(processors), round(money)) + " |";
    }

    private double given(String what) {
        Matcher line = Pattern.compile("(?m)^\\| " + Pattern.quote(what) + " \\| ([0-9.,]+) \\|").matcher(page);
        assertThat(line.find()).as("docs/scale.md says: " + what).isTrue();
        return Double.parseDouble(line.group(1).replace(",", ""));
    }

    private static Percentage within10Percent() {
        return Percentage.withPercentage(10);
    }

    private static String read() {
        try {
            return Files.readString(PAGE);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%,.0f", value);
    }

    private static String round(double value) {
        return String.format(Locale.ROOT, value < 10 ? "%,.1f" : "%,.0f", value);
    }
}
