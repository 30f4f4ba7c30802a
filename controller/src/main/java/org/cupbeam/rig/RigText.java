package org.cupbeam.rig;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Writes a rig file, with comments that say the units and where each number comes from. What is written reads back equal:
 * {@link RigFile} gives the same rig, its sensors in the order cup, strike, pedal, beams.
 */
public final class RigText {
    private RigText() {
    }

    /** The text, where nothing is to be said of where its numbers come from. */
    public static String of(Rig rig) {
        return of(rig, List.of(), Map.of());
    }

    /**
     * The text.
     *
     * @param heading comment lines for its top
     * @param from    where a number comes from, by its key, or by the beam's name for its place; may lack any
     */
    public static String of(Rig rig, List<String> heading, Map<String, String> from) {
        StringBuilder toml = new StringBuilder();
        heading.forEach(line -> toml.append("# ").append(line.replaceAll("\\p{Cntrl}", " ")).append('\n'));
        toml.append("# Lengths in mm along the line of the putt from the hole's centre, before the hole negative.\n");
        toml.append("\n[green]\n");
        line(toml, "stimp_ft", rig.stimpFt(), from.getOrDefault("stimp_ft", "the green's reading in feet, as on the level"));
        line(toml, "uphill_percent", rig.uphillPercent(), from.getOrDefault("uphill_percent", "along the line, uphill positive"));
        line(toml, "side_percent", rig.sidePercent(), from.getOrDefault("side_percent", "across the line, falling to the left positive"));
        toml.append("\n[overshoot]\n");
        line(toml, "limit_mm", rig.limitMm(), from.getOrDefault("limit_mm", "how far past the hole's centre a miss may finish"));
        for (Channel channel : rig.channels()) {
            if (channel.kind() != Channel.Kind.BEAM) {
                toml.append("\n[").append(channel.kind().name().toLowerCase(Locale.ROOT)).append("]\n");
                wiring(channel, toml);
            }
        }
        rig.lampGpio().ifPresent(gpio -> toml.append("\n[lamp]\ngpio = ").append(gpio).append('\n'));
        for (int i = 0; i < rig.channels().size(); i++) {
            for (Beam beam : rig.beams()) {
                if (beam.channel() == i) {
                    beam(beam, rig.channels().get(i), from, toml);
                }
            }
        }
        return toml.toString();
    }

    private static void beam(Beam beam, Channel channel, Map<String, String> from, StringBuilder toml) {
        toml.append("\n[[beam]]\nname = \"").append(channel.name()).append("\"\n");
        wiring(channel, toml);
        line(toml, "position_mm", beam.positionMm(), from.getOrDefault(channel.name(), "from the hole's centre"));
        line(toml, "height_mm", beam.heightMm(), "above the surface");
    }

    private static void wiring(Channel channel, StringBuilder toml) {
        String level = channel.active().name().toLowerCase(Locale.ROOT);
        comment(toml, "gpio = " + channel.gpio(), "the SoC's line number (BCM)");
        comment(toml, "active = \"" + level + '"', "the level when it is " + switch (channel.kind()) {
            case BEAM, CUP -> "blocked";
            case STRIKE -> "struck";
            case PEDAL -> "pressed";
        });
        toml.append("pull = \"").append(channel.pull().name().toLowerCase(Locale.ROOT)).append("\"\n");
    }

    private static void line(StringBuilder toml, String key, double value, String from) {
        comment(toml, key + " = " + value, from);
    }

    private static void comment(StringBuilder toml, String setting, String words) {
        toml.append(String.format(Locale.ROOT, "%-24s# %s", setting, words.replaceAll("\\p{Cntrl}", " "))).append('\n');
    }
}
