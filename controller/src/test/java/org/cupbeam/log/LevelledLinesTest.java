package org.cupbeam.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class LevelledLinesTest {
    private final ByteArrayOutputStream written = new ByteArrayOutputStream();
    private final LevelledLines lines = new LevelledLines(written);

    private String written() {
        return written.toString(StandardCharsets.UTF_8);
    }

    @Test
    void aLogLineStandsBehindItsLevel() {
        lines.println("INFO Link - connected");
        lines.println("WARN Link - the broker is away");
        lines.println("ERROR Scribe - the disk is full");
        assertThat(written()).isEqualTo("<6>Link - connected\n<4>Link - the broker is away\n<3>Scribe - the disk is full\n");
    }

    @Test
    void noTimeAndNoThreadHidesALevelAndEachLineOfATextHasIt() {
        lines.println("21:00:00 WARN Feed - no broker");
        lines.println("[link] ERROR org.cupbeam.link.Link - two\nlines");
        assertThat(written()).isEqualTo("<4>Feed - no broker\n<3>org.cupbeam.link.Link - two\n<3>lines\n");
    }

    @Test
    void whatIsWrittenOtherwiseThanByTheLineIsALineOnceItEnds() {
        PrintWriter command = new PrintWriter(lines, true, StandardCharsets.UTF_8);
        command.print("cupbeam: Zoë.toml:1: ");
        command.flush();
        assertThat(written()).isEmpty();
        command.print("missing\ncupbeam: Zoë.toml:2: ");
        command.println("not a key");
        lines.printf("%d of %d%n", 3, 4);
        assertThat(written()).isEqualTo("<5>cupbeam: Zoë.toml:1: missing\n<5>cupbeam: Zoë.toml:2: not a key\n<5>3 of 4\n");
    }

    @Test
    void aLineThatNeverEndsIsNotKeptForEver() {
        lines.print("a".repeat(200_000));
        assertThat(written()).hasSizeGreaterThan(100_000);
    }

    @Test
    void whatIsNotALogLineIsANotice() {
        lines.println("ERROR Scribe - the disk is full");
        lines.println("cupbeam: lane home/lane-1 is ready");
        lines.println("WARNING: this is somebody else's");
        assertThat(written()).endsWith("<5>cupbeam: lane home/lane-1 is ready\n<5>WARNING: this is somebody else's\n");
    }

    @Test
    void aStackTraceHasTheLevelOfItsLine() {
        lines.println("ERROR Lane - a fault of its own");
        new IllegalStateException("broken", new RuntimeException("why")).printStackTrace(lines);
        assertThat(written().lines()).hasSizeGreaterThan(5).allMatch(line -> line.startsWith("<3>"));
    }
}
