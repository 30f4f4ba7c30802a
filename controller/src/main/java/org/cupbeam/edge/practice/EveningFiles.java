package org.cupbeam.edge.practice;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cupbeam.edge.trace.VcdWriter;
import org.cupbeam.rig.RigText;

/**
 * An evening as three files, for a person to look at and for other programs to grade with: {@code rig.toml},
 * {@code trace.vcd} and {@code truth.csv}.
 */
public final class EveningFiles {
    private static final String COLUMNS = "putt,struck_s,ended_s,from_mm,outcome,finish_mm,finish_side_mm,overshoot,"
            + "visible,speed_at_hole_mm_s,rim,decel_mm_s2,pace_mm,kind";

    private EveningFiles() {
    }

    /**
     * Writes an evening into a folder, which is made where it is missing.
     *
     * @param date what the trace says of when it was taken
     * @throws IOException also where the folder holds a trace already
     */
    public static void write(Evening evening, Path folder, Instant date) throws IOException {
        Files.createDirectories(folder);
        try (VcdWriter trace = VcdWriter.create(folder.resolve("trace.vcd"), evening.rig(), 0, date)) {
            evening.play(trace);
        }
        Files.writeString(folder.resolve("rig.toml"), RigText.of(evening.rig()));
        Files.write(folder.resolve("truth.csv"), truths(evening.truths()));
    }

    private static List<String> truths(List<Truth> truths) {
        Stream.Builder<String> lines = Stream.builder();
        lines.add(COLUMNS);
        for (int i = 0; i < truths.size(); i++) {
            lines.add((i + 1) + "," + line(truths.get(i)));
        }
        return lines.build().toList();
    }

    private static String line(Truth truth) {
        return String.join(",", number(truth.struckNs() / 1e9, 6), number(truth.endedNs() / 1e9, 6),
                number(truth.fromMm(), 1), truth.holed() ? "holed" : "missed", number(truth.finishMm(), 1),
                number(truth.finishSideMm(), 1), flag(truth.overshoot()), flag(truth.visible()),
                number(truth.speedAtHoleMmPerS(), 1), flag(truth.rim()), number(truth.decelMmPerS2(), 2),
                number(truth.paceMm(), 1), truth.traits().stream()
                        .map(trait -> trait.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                        .collect(Collectors.joining("+")));
    }

    private static String flag(boolean value) {
        return value ? "1" : "0";
    }

    private static String number(double value, int decimals) {
        return Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
}
