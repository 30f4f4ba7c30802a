package org.cupbeam.studio.seed;

/**
 * Somebody who comes to the studio.
 *
 * @param hand  {@code left} or {@code right}
 * @param units {@code metric} or {@code feet}
 */
record Person(Truth truth, Habit habit, String hand, String units) {
    String name() {
        return truth.player();
    }
}
