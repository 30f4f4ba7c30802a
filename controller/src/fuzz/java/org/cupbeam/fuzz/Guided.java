package org.cupbeam.fuzz;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;

/**
 * The same targets, with inputs that Jazzer finds by what they reach in the code (libFuzzer, in a process of its own). Only
 * in the nightly profile, which brings Jazzer.
 */
public final class Guided {
    private static final String TARGET = "cupbeam.fuzz.target";
    private static Target target;

    private Guided() {
    }

    /**
     * Spoils inputs of a target for {@code -Dcupbeam.fuzz.seconds=N}, 60 otherwise.
     *
     * @throws AssertionError where one was a fault, with the file that holds it
     */
    public static void run(Class<? extends Target> type) throws Exception {
        long seed = Long.getLong("cupbeam.seed", new Random().nextInt(Integer.MAX_VALUE));
        Target each = made(type.getName());
        Path folder = Fuzz.folder("guided-" + each.name());
        Path corpus = Files.createDirectory(folder.resolve("corpus"));
        int number = 0;
        for (byte[] good : each.seeds()) {
            Files.write(corpus.resolve("good-" + number++), good);
        }
        Path said = folder.resolve("said.log");
        Process jazzer = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx512m", "-ea",
                "-D" + TARGET + "=" + type.getName(), "-cp", System.getProperty("java.class.path"),
                "com.code_intelligence.jazzer.Jazzer", "--target_class=" + Guided.class.getName(), "--reproducer_path=" + folder,
                "--instrumentation_includes=org.cupbeam.**:org.tomlj.**:com.fasterxml.jackson.core.**",
                "-max_total_time=" + Integer.getInteger("cupbeam.fuzz.seconds", 60), "-timeout=60", "-rss_limit_mb=1500",
                "-seed=" + seed, "-max_len=" + each.longest(), "-dict=" + words(folder, each.words()),
                "-artifact_prefix=" + folder + "/", corpus.toString()).redirectErrorStream(true).redirectOutput(said.toFile()).start();
        int status = jazzer.waitFor();
        List<String> lines = List.of(Files.readString(said, StandardCharsets.ISO_8859_1).split("\n"));
        System.out.println("guided " + each.name() + ": seed " + seed + ", " + last(lines, "Done") + "; "
                + last(lines, "cov:").replaceAll("lim:.*", ""));
        if (status != 0) {
            throw new AssertionError(each.name() + ": a fault, its input in " + folder + "; seed " + seed + "; "
                    + last(lines, "== Java Exception") + last(lines, "ERROR: libFuzzer"));
        }
    }

    /** What Jazzer calls. */
    public static void fuzzerTestOneInput(byte[] input) throws Exception {
        if (target == null) {
            target = made(System.getProperty(TARGET));
        }
        Trial.unbounded(target, input); // Jazzer, which allocates as it instruments, has bounds of its own
    }

    private static Target made(String type) throws Exception {
        return (Target) Class.forName(type).getDeclaredConstructor().newInstance();
    }

    private static String last(List<String> lines, String part) {
        return lines.stream().filter(line -> line.contains(part)).reduce("", (before, after) -> after);
    }

    private static Path words(Path folder, List<String> words) throws IOException {
        StringBuilder dictionary = new StringBuilder();
        for (String word : words) {
            dictionary.append('"');
            for (byte each : word.getBytes(StandardCharsets.UTF_8)) {
                dictionary.append(String.format("\\x%02X", each));
            }
            dictionary.append("\"\n");
        }
        return Files.writeString(folder.resolve("words"), dictionary);
    }
}
