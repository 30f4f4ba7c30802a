package org.cupbeam.studio.ingest;

import java.time.Duration;

/**
 * For how long numbers that are missing are waited for before what follows them is kept without them.
 *
 * @param atFirst where nothing of the journal is kept: a new host cannot have what was cleared long ago
 * @param later   any other time
 * @param knocks  how often what follows must have come again, as lanes send it while nothing moves
 */
public record Patience(Duration atFirst, Duration later, int knocks) {
    /** Lanes send again whatever this host has not said that it stored. */
    public static final Patience WITH_LANES = new Patience(Duration.ofSeconds(30), Duration.ofMinutes(10), 2);
    /** What comes over a bridge comes in order, and its lanes do not hear this host: what is missing will not come again. */
    public static final Patience WITH_BRIDGES = new Patience(Duration.ofSeconds(10), Duration.ofSeconds(10), 0);
}
