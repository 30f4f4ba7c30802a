package org.cupbeam.log;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class JsonLinesTest {
    private final ByteArrayOutputStream written = new ByteArrayOutputStream();
    private final JsonLines lines = new JsonLines(written, () -> Instant.parse("2026-11-25T21:00:00.5Z"));

    private List<JsonNode> read() throws Exception {
        List<JsonNode> all = new ArrayList<>();
        for (String line : written.toString(StandardCharsets.UTF_8).lines().toList()) {
            all.add(new ObjectMapper().readTree(line));
        }
        return all;
    }

    @Test
    void aLineOfTheLogIsAnObjectWhateverItsBeginning() throws Exception {
        lines.println("INFO Link - connected");
        lines.println("21:00:00 WARN Feed - no broker (\"away\\\"); trying again");
        lines.println("[intake] ERROR org.cupbeam.Intake - two\nlines");
        assertThat(written.toString(StandardCharsets.UTF_8).lines().findFirst().orElseThrow()).isEqualTo(
                "{\"time\":\"2026-11-25T21:00:00.500Z\",\"level\":\"info\",\"from\":\"Link\",\"said\":\"connected\"}");
        assertThat(read()).extracting(each -> each.get("level").asText() + " " + each.get("from").asText() + " "
                + each.get("said").asText()).containsExactly("info Link connected",
                "warn Feed no broker (\"away\\\"); trying again", "error org.cupbeam.Intake two\nlines");
    }

    @Test
    void whatIsNotALogLineIsANotice() throws Exception {
        lines.println("ERROR Scribe - the disk is full");
        lines.println("cupbeam: lane home/lane-1 is ready");
        JsonNode last = read().get(1);
        assertThat(last.get("level").asText()).isEqualTo("notice");
        assertThat(last.has("from")).isFalse();
    }

    @Test
    void aStackTraceBelongsToItsLine() throws Exception {
        lines.println("ERROR Lane - a fault of its own");
        new IllegalStateException("broken", new RuntimeException("why")).printStackTrace(lines);
        assertThat(read()).hasSizeGreaterThan(5).allMatch(each -> each.get("level").asText().equals("error")
                && each.get("from").asText().equals("Lane"));
        assertThat(read().subList(1, read().size())).allMatch(each -> each.get("more").asBoolean());
    }
}
