package org.cupbeam.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Spoils a target's good inputs again and again, and keeps as new starting points those that it says something new of: a
 * reason of another shape. The same seed spoils the same.
 */
public final class Fuzz {
    private static final Pattern PARTICULARS = Pattern.compile("\"[^\"]*\"?|[-+.\\dEe_]*\\d[-+.\\dEe_]*|\\([^)]*\\)|'[^']*'");
    private static final int SHAPES_MAX = 2_000;
    /** Longer ones teach little, and take long. */
    private static final int KEPT_MAX = 8 * 1024;
    private static final int TIMES = Integer.getInteger("cupbeam.fuzz.times", Boolean.getBoolean("cupbeam.nightly") ? 60 : 1);

    private final Target target;
    private final long seed;
    private final Random dice;
    private final List<byte[]> kept = new ArrayList<>();
    private final Set<String> shapes = new HashSet<>();

    private Fuzz(Target target, long seed) {
        this.target = target;
        this.seed = seed;
        this.dice = new Random(seed);
    }

    /**
     * Gives it all that was once a fault, then so many spoilt inputs; in the nightly profile 60 times as many, or
     * {@code -Dcupbeam.fuzz.times=N} as many. The seed is {@code -Dcupbeam.seed=N}, or a fresh one, and is printed.
     *
     * @return how many shapes of outcome there were
     */
    public static int of(Target target, int tries) {
        long seed = Long.getLong("cupbeam.seed", new Random().nextLong() & Integer.MAX_VALUE);
        int count = tries * TIMES;
        Fuzz fuzz = new Fuzz(target, seed);
        fuzz.known();
        for (int i = 0; i < count; i++) {
            fuzz.step(i);
        }
        System.out.println("fuzz " + target.name() + ": seed " + seed + ", " + count + " inputs, " + fuzz.shapes.size()
                + " kinds of outcome");
        return fuzz.shapes.size();
    }

    /** Whatever lies in {@code src/test/resources/fuzz/<name>} was a fault once. */
    private void known() {
        Path folder = Path.of("src/test/resources/fuzz", target.name());
        if (Files.isDirectory(folder)) {
            try (Stream<Path> files = Files.list(folder).sorted()) {
                for (Path each : files.toList()) {
                    take(Files.readAllBytes(each), each.toString());
                }
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
        for (byte[] good : target.seeds()) {
            take(good, "a good input");
            kept.add(good);
        }
    }

    private void step(int number) {
        byte[] from = kept.get(dice.nextInt(kept.size()));
        byte[] spoilt = new Spoiler(dice, target.words(), target.longest())
                .spoil(from, kept.get(dice.nextInt(kept.size())));
        if (take(spoilt, "input " + number) && spoilt.length <= KEPT_MAX && shapes.size() < SHAPES_MAX) {
            kept.add(spoilt);
        }
    }

    /** @return whether something new was said of it */
    private boolean take(byte[] input, String which) {
        try {
            return shapes.add(PARTICULARS.matcher(Trial.of(target, input)).replaceAll("?"));
        } catch (AssertionError fault) {
            throw new AssertionError(fault.getMessage() + "\n  of " + which + ", now in " + saved(input)
                    + "; repeat with -Dcupbeam.seed=" + seed, fault);
        }
    }

    private Path saved(byte[] input) {
        try {
            Path folder = Files.createDirectories(Path.of("target/fuzz"));
            return Files.write(folder.resolve(target.name() + "-" + seed), input);
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    /** A new folder within the build's, for the files that a target needs. */
    public static Path folder(String name) throws IOException {
        return Files.createTempDirectory(Files.createDirectories(Path.of("target/fuzz")), name);
    }
}
