package org.cupbeam.studio.store;

import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import org.cupbeam.studio.store.Amendments.Target;
import org.cupbeam.studio.store.Amendments.What;
import org.cupbeam.studio.store.sums.PuttSums;
import org.cupbeam.studio.store.sums.RunSums;
import org.jdbi.v3.core.Handle;

/**
 * Keeps the list of players. What is refused is refused with an {@link IllegalArgumentException} that says why, who is
 * not there with a {@link NoSuchElementException}.
 */
public final class PlayerBook {
    /** The longest remark, in characters. */
    public static final int LONGEST_REMARK = 400;

    private final Store store;
    private final Names names;

    public PlayerBook(Store store) {
        this.store = store;
        this.names = new Names(store.numbers());
    }

    /** A new player. @return the number */
    public int add(String name, long nowMs) {
        return add(name, Scope.ALL, nowMs);
    }

    /**
     * The same, for some studios: there one who plays elsewhere alone is new, too.
     *
     * @return the number
     */
    public int add(String name, Scope scope, long nowMs) {
        String text = Texts.line("name", name, Texts.NAME);
        return store.write(h -> {
            Optional<Integer> known = known(h, NameKey.of(text));
            require(known.isEmpty() || !Sight.of(h, scope).seesPlayer(h, known.get()), "\"" + text + "\" is a player already, or was one's name; "
                    + "choose that one, or add something to the name");
            int player = names.player(h, text, nowMs);
            scope.studios().forEach(studio -> h.execute("INSERT INTO player_made (studio, player_id) VALUES (?, ?) "
                    + "ON CONFLICT (studio, player_id) DO NOTHING", studio, player));
            return player;
        });
    }

    /**
     * What else is known of a player; null for what is not.
     *
     * @param hand   {@code left} or {@code right}
     * @param units  {@code metric} or {@code feet}
     * @param remark one line
     */
    public void describe(int player, String hand, String units, String remark) {
        require(hand == null || Set.of("left", "right").contains(hand), "hand: give left or right");
        require(units == null || Set.of("metric", "feet").contains(units), "units: give metric or feet");
        String line = remark == null || remark.isBlank() ? null : Texts.line("remark", remark, LONGEST_REMARK);
        store.writing(h -> {
            name(h, player);
            h.execute("UPDATE player SET hand = ?, units = ?, remark = ? WHERE id = ?", hand, units, line, player);
        });
    }

    /** Another name for the same person. What lanes still say of the old one is counted for it, too. */
    public void rename(int player, String name, Who who) {
        rename(player, name, Scope.ALL, who);
    }

    /** The same, asked by whoever looks after some studios: an old name of somebody whom they don't see whole stays that one's. */
    public void rename(int player, String name, Scope scope, Who who) {
        String text = Texts.line("name", name, Texts.NAME);
        String key = NameKey.of(text);
        store.writing(h -> {
            String was = name(h, player);
            Optional<Integer> other = h.select("SELECT id FROM player WHERE name_key = ? AND id <> ?", key, player)
                    .mapTo(Integer.class).findOne();
            require(other.isEmpty(), "\"" + text + "\" is another player's name; merge the two if they are one person");
            require(isFree(h, Sight.of(h, scope), key), "\"" + text + "\" was a player's name elsewhere on this host; add something to the name");
            h.execute("DELETE FROM player_alias WHERE name_key = ?", key);
            h.execute("UPDATE player SET name = ?, name_key = ? WHERE id = ?", text, key, player);
            if (!NameKey.of(was).equals(key)) {
                h.execute("INSERT INTO player_alias (name_key, player_id) VALUES (?, ?)", NameKey.of(was), player);
            }
            Amendments.note(h, store, What.RENAMED, Target.player(player), was, text, who);
            store.forget();
        });
    }

    /** Two names turned out to be one person's: the first one's runs are the second one's from now on. */
    public void merge(int player, int into, Who who) {
        require(player != into, "that is one player already");
        store.writing(h -> {
            String was = name(h, player);
            String becomes = name(h, into);
            List<Integer> runs = h.select("SELECT id FROM run WHERE player_id = ? ORDER BY id", player)
                    .mapTo(Integer.class).list();
            RunSums.around(h, () -> PuttSums.around(h, () -> runs.forEach(run -> RecordBook.reassign(h, store, run, into, who)),
                    "player_id IN (?, ?)", player, into), "player_id IN (?, ?)", player, into);
            h.execute("UPDATE note SET player_id = ?, of_player = ? WHERE player_id = ?", into, into, player);
            h.execute("INSERT INTO player_made (studio, player_id) SELECT studio, ? FROM player_made WHERE player_id = ? "
                    + "ON CONFLICT (studio, player_id) DO NOTHING", into, player);
            h.execute("UPDATE player_alias SET player_id = ? WHERE player_id = ?", into, player);
            h.execute("INSERT INTO player_alias (name_key, player_id) VALUES (?, ?)", NameKey.of(was), into);
            h.execute("UPDATE player SET name_key = NULL, merged_into = ? WHERE id = ?", into, player);
            h.execute("UPDATE player SET merged_into = ? WHERE merged_into = ?", into, player);
            Amendments.note(h, store, What.MERGED, Target.player(into), was, becomes, who);
            store.forget();
        });
    }

    /**
     * Removes a player's name for good, and every note on the player; what was counted stays, nobody's.
     *
     * @return the notes on others whose words still hold the name, for somebody to look at
     */
    public List<Integer> forget(int player, Who who) {
        List<Integer> mentions = store.write(h -> {
            name(h, player);
            List<Integer> found = new Forgetting(h, player, who.atMs()).all();
            Amendments.note(h, store, What.FORGOTTEN, Target.player(player), null, null, who);
            store.forget();
            return found;
        });
        store.scrub();
        return mentions;
    }

    private static Optional<Integer> known(Handle h, String key) {
        return h.select("SELECT id FROM player WHERE name_key = ? UNION SELECT player_id FROM player_alias "
                + "WHERE name_key = ?", key, key).mapTo(Integer.class).findFirst();
    }

    /** Whether nobody was called so whom whoever asks does not see whole. */
    private static boolean isFree(Handle h, Sight sight, String key) {
        return h.select("SELECT player_id FROM player_alias WHERE name_key = ?", key).mapTo(Integer.class).list().stream()
                .allMatch(each -> sight.seesWhole(h, each));
    }

    private static String name(Handle h, int player) {
        return h.select("SELECT name FROM player WHERE id = ? AND name_key IS NOT NULL", player).mapTo(String.class)
                .findOne().orElseThrow(() -> new NoSuchElementException("there is no player " + player));
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
