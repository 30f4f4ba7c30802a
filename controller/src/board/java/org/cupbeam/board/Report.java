package org.cupbeam.board;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Locale;

/** What was measured, for people. */
record Report(Path file) {
    void line(String format, Object... values) throws IOException {
        String line = String.format(Locale.ROOT, format, values);
        System.out.println("board: " + line);
        Files.write(file, List.of(line), StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }

    /** How the playing went: the computer may have been too busy for it. */
    void playing(List<Pins.Driven> driven, Pins pins) throws IOException {
        long lateNs = 0;
        long servedNs = 0;
        int unseen = 0;
        for (int i = 0; i < driven.size(); i++) {
            Pins.Driven each = driven.get(i);
            lateNs = Math.max(lateNs, each.atNs() - driven.get(0).atNs() - each.edge().timeNs() + driven.get(0).edge().timeNs());
            if (each.servedNs() == Pins.Driven.UNSEEN) {
                unseen++;
            } else {
                servedNs = Math.max(servedNs, each.servedNs() - each.beforeNs());
            }
        }
        line("%d edges played%s, at most %.2f ms late; the kernel took them within %.2f ms, %d not seen to be; "
                + "held up for %.1f ms at one of them",
                driven.size(), pins.hasty() ? " before all else" : "", lateNs * 1e-6, servedNs * 1e-6, unseen, pins.haltedNs() * 1e-6);
    }
}
