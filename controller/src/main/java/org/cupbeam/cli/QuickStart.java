package org.cupbeam.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Reads the lane command's options without the library that reads them otherwise: a lane that lost its power is to be
 * back at once, and setting that library up takes longer than all the rest of a start. Whatever is out of the ordinary
 * (a wish for help, an option that is wrong or unknown) is left to the library, and so is every word about it.
 */
final class QuickStart {
    private static final Pattern PLAIN = Pattern.compile("--[a-z-]+(\\s+[^\\s\"'#@]+)?");

    private QuickStart() {
    }

    /** The lane command as these arguments have it; null where they are better read with care. */
    static LaneCommand lane(String... given) {
        if (given.length == 0 || !given[0].equals("lane")) {
            return null;
        }
        String[] arguments = given.length == 2 && given[1].startsWith("@") ? written(Path.of(given[1].substring(1))) : given;
        LaneCommand command = new LaneCommand();
        try {
            for (int i = 1; i < arguments.length; i++) {
                if (arguments[i].equals("--practice")) {
                    command.edges.practice = true;
                } else if (!arguments[i].startsWith("--") || ++i == arguments.length || arguments[i].startsWith("-")
                        || !set(command, arguments[i - 1], arguments[i])) {
                    return null;
                }
            }
        } catch (IllegalArgumentException nonsense) {
            return null;
        }
        return command.edges.rigFile == null ? null : command;
    }

    /** What a file of options says, an option on each line; nothing where it is not as plain as that. */
    private static String[] written(Path file) {
        try (Stream<String> lines = Files.lines(file)) {
            return Stream.concat(Stream.of("lane"), lines.map(String::strip).filter(line -> !line.isEmpty() && line.charAt(0) != '#')
                    .flatMap(line -> PLAIN.matcher(line).matches() ? Stream.of(line.split("\\s+")) : Stream.of("")))
                    .toArray(String[]::new);
        } catch (IOException | UncheckedIOException unreadable) {
            return new String[0];
        }
    }

    /** @return whether there is an option of this name */
    private static boolean set(LaneCommand command, String option, String value) {
        switch (option) {
            case "--rig" -> command.edges.rigFile = Path.of(value);
            case "--trace" -> command.edges.traceFile = Path.of(value);
            case "--from" -> command.edges.fromS = Double.parseDouble(value);
            case "--speed" -> command.edges.speed = Double.parseDouble(value);
            case "--seed" -> command.edges.seed = Long.parseLong(value);
            case "--studio" -> command.studio = value;
            case "--lane" -> command.lane = value;
            case "--data" -> command.data = Path.of(value);
            case "--broker" -> command.broker = value;
            case "--username" -> command.user = value;
            case "--password-file" -> command.passwordFile = Path.of(value);
            case "--ca-file" -> command.trusted = Path.of(value);
            case "--drill" -> command.drillFile = Path.of(value);
            case "--players" -> command.players = List.of(value.split(",", -1));
            default -> {
                return false;
            }
        }
        return true;
    }
}
