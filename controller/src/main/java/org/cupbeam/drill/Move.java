package org.cupbeam.drill;

/** What can happen to a play. A play is nothing but its beginning and its moves, so these alone need to be kept. */
public sealed interface Move {
    /** What comes of it. */
    Step on(Play play);

    /** The player whose turn it is has putted. */
    record Attempt(Putt putt) implements Move {
        @Override
        public Step on(Play play) {
            return play.after(putt);
        }
    }

    /** The last attempt did not count. */
    record TakeBack() implements Move {
        @Override
        public Step on(Play play) {
            return play.takeBack();
        }
    }

    /** It is the next player's turn. */
    record Pass() implements Move {
        @Override
        public Step on(Play play) {
            return play.pass();
        }
    }

    /** Enough: what is in play ends here. */
    record End() implements Move {
        @Override
        public Step on(Play play) {
            return play.end();
        }
    }
}
