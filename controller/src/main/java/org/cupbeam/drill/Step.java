package org.cupbeam.drill;

import java.util.List;

/**
 * What came of a move.
 *
 * @param play       as it stands now
 * @param happenings in the order in which to tell of them; none where the move had nothing to act on
 */
public record Step(Play play, List<Happening> happenings) {

    public Step {
        happenings = List.copyOf(happenings);
    }
}
