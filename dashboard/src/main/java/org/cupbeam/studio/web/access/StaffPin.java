package org.cupbeam.studio.web.access;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;

/**
 * The PIN that staff sign in with: kept as a slow hash in a file that only its owner may read. There is none until one
 * is set. Whoever can write that file may set another, also while a host runs: it takes notice.
 */
public final class StaffPin {
    /** The fewest and the most characters. */
    public static final int SHORTEST = 6;
    public static final int LONGEST = 64;

    private final PinFile file;
    private final SlowHash slow;
    private final int rounds;
    private final Slowly slowly = new Slowly();

    /** @param file need not be there */
    public StaffPin(Path file) {
        this(file, SlowHash.ROUNDS);
    }

    StaffPin(Path file, int rounds) {
        this.file = new PinFile(file);
        this.slow = new SlowHash(new SecureRandom(), rounds);
        this.rounds = rounds;
    }

    /** A PIN whose hash is quick, for tests that sign in often. */
    public static StaffPin quick(Path file) {
        return new StaffPin(file, 10);
    }

    /** Those of people who sign in by name, hashed as slowly. */
    public Secrets secrets() {
        return new Secrets(rounds);
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
        return slowly.done(() -> SlowHash.matches(Guessable.normal(pin), kept.get()));
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
        String hash = slowly.done(() -> slow.of(Guessable.normal(pin)));
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
        return Guessable.objection("A PIN", SHORTEST, LONGEST, pin);
    }
}
