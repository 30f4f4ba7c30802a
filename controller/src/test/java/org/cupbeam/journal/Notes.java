package org.cupbeam.journal;

import java.nio.file.Path;
import java.time.Instant;
import org.cupbeam.event.Data;
import org.cupbeam.event.Stamp;

/** Journals whose inputs are plain texts. */
final class Notes implements InputCodec<String> {
    static final Instant NOW = Instant.parse("2026-11-25T06:00:00Z");
    static final Stamp STAMP = new Stamp("boot", 1, Stamp.Clock.SYNCHRONISED);

    static Journal<String> open(Path file) throws JournalException {
        return Journal.open(file, "north", "bay-3", new Notes(), NOW);
    }

    static Entry<String> event() {
        return Entry.<String>empty().with(NOW, new Data.Clock(STAMP, NOW));
    }

    @Override
    public String encode(String input) {
        return input;
    }

    @Override
    public String decode(String text) {
        return text;
    }
}
