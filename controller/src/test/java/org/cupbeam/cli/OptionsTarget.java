package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.fuzz.Fuzz;
import org.cupbeam.fuzz.Target;
import org.cupbeam.rig.file.Shown;

/**
 * Command lines, an argument a line. {@code @rig} and {@code @trace} are files that are there, which only {@code replay} is
 * given: {@code lane} and {@code record} would begin, and not end. All other names lie in a folder of the test's own.
 */
public final class OptionsTarget implements Target {
    private static final String RIG = "[green]\nstimp_ft = 10\nuphill_percent = 0\n[overshoot]\nlimit_mm = 900\n[cup]\ngpio = 4\n";
    private static final String TRACE = """
            $timescale 1 us $end $var wire 1 ! cup $end $enddefinitions $end
            #1000000 1! #1030000 0! #9000000
            """;
    private static final List<String> FILES = List.of("--rig", "--trace", "--data", "--drill", "--password-file", "--ca-file");
    private final Path folder;

    public OptionsTarget() throws IOException {
        folder = Fuzz.folder("options");
        Files.writeString(folder.resolve("rig"), RIG);
        Files.writeString(folder.resolve("trace"), TRACE);
    }

    @Override
    public String name() {
        return "options";
    }

    @Override
    public List<byte[]> seeds() {
        return List.of("replay --rig @rig @trace", "replay --rig @rig --drill none --players A,B @trace", "lane --rig none --practice",
                "lane --rig none --trace none --from 10 --speed 5 --studio home --lane one --broker tcp://localhost:1 --seed 4"
                        + " --username u --password-file p --ca-file c --drill d --players A,B --data x",
                "record --rig none --practice --speed 2 out", "journal check none", "journal backup none to",
                "journal restore none none", "help lane", "--version", "replay --help").stream()
                .map(each -> each.replace(' ', '\n').getBytes(StandardCharsets.UTF_8)).toList();
    }

    @Override
    public List<String> words() {
        return List.of("\n--rig\n", "\n--practice", "\n--trace\n", "\n--from\n", "\n--speed\n", "\n--seed\n", "\n--studio\n", "\n--lane\n",
                "\n--data\n", "\n--broker\n", "\n--players\n", "\n--drill\n", "\n--help", "--version", "@rig", "@trace", "lane", "replay",
                "record", "journal", "check", "help", "=", "--", "-", "''", "$HOME", "%s%n", "${sys:user.home}", "A,A", ",,,", " ");
    }

    @Override
    public int longest() {
        return 4_096;
    }

    @Override
    public String take(byte[] input) throws Exception {
        String[] arguments = arguments(new String(input, StandardCharsets.UTF_8));
        PrintStream out = System.out;
        PrintStream err = System.err;
        ByteArrayOutputStream told = new ByteArrayOutputStream();
        int status;
        try (PrintStream to = new PrintStream(told, true, StandardCharsets.UTF_8)) {
            System.setOut(to);
            System.setErr(to);
            LaneCommand quick = QuickStart.lane(arguments);
            status = quick == null ? Commands.execute(arguments) : laneIsRefused(quick);
        } finally {
            System.setOut(out);
            System.setErr(err);
        }
        String words = told.toString(StandardCharsets.UTF_8);
        assertThat(words).doesNotContain("a fault of its own").doesNotContain("\tat ");
        assertThat(status).isBetween(0, 2);
        assertThat(status == 0 || !words.isBlank()).as("status " + status + " with a reason").isTrue();
        // What a person gave on the command line comes back as it was: it is their own terminal.
        String shown = Shown.of(words, 300);
        return status == 0 ? ACCEPTED : status + shown;
    }

    private int laneIsRefused(LaneCommand lane) throws Exception {
        try {
            return lane.call();
        } catch (Exception failure) {
            return Cupbeam.explain(failure, new java.io.PrintWriter(System.err, true));
        }
    }

    private String[] arguments(String text) {
        String[] lines = text.split("\n", 40);
        List<String> arguments = new ArrayList<>();
        String before = "";
        for (String line : lines) {
            String plain = line.replaceAll("[/\\\\@\0]", "");
            boolean there = lines[0].equals("replay") && (line.equals("@rig") || line.equals("@trace"));
            boolean file = FILES.contains(before) || !before.startsWith("-")
                    && arguments.size() > (lines[0].equals("journal") || lines[0].equals("help") ? 1 : 0);
            arguments.add(there ? folder.resolve(line.substring(1)).toString() : !file || plain.startsWith("-") ? plain
                    : folder.resolve("none-" + plain.replaceAll("\\P{Alnum}", "")).toString());
            before = line;
        }
        return arguments.toArray(String[]::new);
    }
}
