package org.cupbeam.studio.web.access;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.text.Normalizer;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/**
 * The PIN that staff sign in with: kept as a slow hash in a file that only its owner may read. There is none until one
 * is set. Whoever can write that file may set another, also while a host runs: it takes notice.
 */
public final class StaffPin {
    /** The fewest and the most characters. */
    public static final int SHORTEST = 6;
    public static final int LONGEST = 64;
    private static final int FOREVER_MS = 20_000;

    private final PinFile file;
    private final SlowHash slow;
    /** One at a time, so that many tries cannot take all of the machine. */
    private final ReentrantLock hashing = new ReentrantLock(true);

    /** @param file need not be there */
    public StaffPin(Path file) {
        this(file, SlowHash.ROUNDS);
    }

    StaffPin(Path file, int rounds) {
        this.file = new PinFile(file);
        this.slow = new SlowHash(new SecureRandom(), rounds);
    }

    /** A PIN whose hash is quick, for tests that sign in often. */
    public static StaffPin quick(Path file) {
        return new StaffPin(file, 10);
    }

    /** Whether one is set. A file that makes no sense counts as one that nobody knows. */
    public boolean isSet() {
        return stamp().isPresent();
    }

    /** Tells one PIN from any other, and says nothing of it; empty while none is set. */
    public Optional<String> stamp() {
        return file.text();
    }

    /** Whether this is it. Takes long. */
    public boolean is(String pin) {
        Optional<String> kept = file.text();
        if (kept.isEmpty() || pin.length() > LONGEST || !SlowHash.isHash(kept.get())) {
            return false;
        }
        return slowly(() -> SlowHash.matches(normal(pin), kept.get()));
    }

    /**
     * Sets it, whatever it was.
     *
     * @throws IllegalArgumentException for one that is too easily guessed, saying what would do
     */
    public void set(String pin) {
        objection(pin).ifPresent(why -> {
            throw new IllegalArgumentException(why);
        });
        String hash = slowly(() -> slow.of(normal(pin)));
        try {
            file.write(hash);
        } catch (IOException e) {
            throw new UncheckedIOException("the PIN could not be written to " + file.path(), e);
        }
    }

    /** Has none any more: pages are for whoever sits at this machine. @return whether there was one */
    public boolean forget() {
        try {
            return file.delete();
        } catch (IOException e) {
            throw new UncheckedIOException("the PIN could not be deleted: " + file.path(), e);
        }
    }

    /** What speaks against a PIN, with what would do. */
    public static Optional<String> objection(String pin) {
        String text = normal(pin);
        if (text.length() < SHORTEST || text.length() > LONGEST) {
            return Optional.of("A PIN has " + SHORTEST + " to " + LONGEST + " characters; digits will do.");
        }
        if (text.codePoints().anyMatch(Character::isISOControl)) {
            return Optional.of("A PIN is made of characters that can be seen; digits will do.");
        }
        boolean steady = true;
        int step = text.charAt(1) - text.charAt(0);
        for (int i = 1; i < text.length(); i++) {
            steady &= text.charAt(i) - text.charAt(i - 1) == step;
        }
        return steady && Math.abs(step) <= 1
                ? Optional.of("That is the first one that anybody would try. Choose one without such an order.")
                : Optional.empty();
    }

    private <T> T slowly(Supplier<T> work) {
        try {
            if (!hashing.tryLock(FOREVER_MS, TimeUnit.MILLISECONDS)) {
                throw new IllegalStateException("too many are signing in at once");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while waiting to sign in", e);
        }
        try {
            return work.get();
        } finally {
            hashing.unlock();
        }
    }

    /** One PIN, whichever keyboard wrote it. */
    private static String normal(String pin) {
        return Normalizer.normalize(pin, Normalizer.Form.NFKC);
    }
}
