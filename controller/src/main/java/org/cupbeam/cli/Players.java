package org.cupbeam.cli;

import java.util.HashSet;
import java.util.List;
import org.cupbeam.drill.Play;
import org.cupbeam.event.Score;

/** Players' names as given on a command line. */
final class Players {
    private Players() {
    }

    /** The names, if they can be shown on a board and told apart; one who has no name where none is given. */
    static List<String> checked(List<String> names) throws Refusal {
        if (names == null) {
            return List.of("player");
        }
        if (names.size() > Play.PLAYERS_MAX) {
            throw new Refusal("--players: " + names.size() + " names; give at most " + Play.PLAYERS_MAX);
        }
        if (new HashSet<>(names).size() < names.size()) {
            throw new Refusal("--players: a name is there twice; give each player one of their own");
        }
        for (String name : names) {
            if (name.isBlank() || name.length() > Score.MAX_NAME || name.codePoints().anyMatch(Character::isISOControl)) {
                throw new Refusal("--players: \"" + name + "\" is no name; give 1 to " + Score.MAX_NAME
                        + " characters, on one line");
            }
        }
        return names;
    }
}
