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
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

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
        Files.writeString(folder.resolve("rig.toml"), rig(evening.rig()));
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

    private static String rig(Rig rig) {
        StringBuilder toml = new StringBuilder("# lengths in mm along the line, from the hole's centre\n[green]\n");
        toml.append("stimp_ft = ").append(rig.stimpFt()).append("\nuphill_percent = ").append(rig.uphillPercent())
                .append("\nside_percent = ").append(rig.sidePercent()).append("\n\n[overshoot]\nlimit_mm = ")
                .append(rig.limitMm()).append('\n');
        for (Channel channel : rig.channels()) {
            if (channel.kind() != Channel.Kind.BEAM) {
                toml.append("\n[").append(channel.kind().name().toLowerCase(Locale.ROOT)).append("]\n");
                wiring(channel, toml);
            }
        }
        rig.lampGpio().ifPresent(gpio -> toml.append("\n[lamp]\ngpio = ").append(gpio).append('\n'));
        for (Beam beam : rig.beams()) {
            Channel channel = rig.channels().get(beam.channel());
            toml.append("\n[[beam]]\nname = \"").append(channel.name()).append("\"\n");
            wiring(channel, toml);
            toml.append("position_mm = ").append(beam.positionMm()).append("\nheight_mm = ")
                    .append(beam.heightMm()).append('\n');
        }
        return toml.toString();
    }

    private static void wiring(Channel channel, StringBuilder toml) {
        toml.append("gpio = ").append(channel.gpio()).append('\n');
        if (channel.active() == Channel.Level.LOW) {
            toml.append("active = \"low\"\n");
        }
        if (channel.pull() != Channel.Pull.OFF) {
            toml.append("pull = \"").append(channel.pull().name().toLowerCase(Locale.ROOT)).append("\"\n");
        }
    }
}
