package org.cupbeam.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class LevelledLinesTest {
    private final ByteArrayOutputStream written = new ByteArrayOutputStream();
    private final LevelledLines lines = new LevelledLines(written);

    private String written() {
        return written.toString(StandardCharsets.UTF_8).replace(System.lineSeparator(), "\n");
    }

    @Test
    void aLogLineStandsBehindItsLevel() {
        lines.println("INFO Link - connected");
        lines.println("WARN Link - the broker is away");
        lines.println("ERROR Scribe - the disk is full");
        assertThat(written()).isEqualTo("<6>Link - connected\n<4>Link - the broker is away\n<3>Scribe - the disk is full\n");
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
