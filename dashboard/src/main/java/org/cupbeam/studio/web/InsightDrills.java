package org.cupbeam.studio.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.DrillJson;
import org.cupbeam.studio.store.Shelf;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.logbook.Drills;
import org.jdbi.v3.core.Handle;

/**
 * The drills that a player's runs can be foreseen for: those that the player played last, then those of the studio, then
 * those that come with the product. Each once.
 *
 * @param byKey by which a request may mean one: one that is in the list under another key, too
 */
record InsightDrills(List<Choice> choices, Map<String, Choice> byKey) {
    private static final int PLAYED_MAX = 12;

    /** @param key by which a request means it */
    record Choice(String key, Drill drill) {
    }

    static InsightDrills of(Handle h, Sight sight, int player) {
        List<Choice> choices = new ArrayList<>();
        Map<String, Choice> byKey = new HashMap<>();
        Drills.ofPlayer(h, sight, player, PLAYED_MAX).forEach(each -> {
            Drill drill = read(each.terms());
            if (drill != null) {
                add(choices, byKey, "played-" + each.id(), drill);
            }
        });
        Shelf.all(h, sight.scope()).forEach(each -> add(choices, byKey, "own-" + each.id(), each.drill()));
        DrillFile.presets().forEach(key -> add(choices, byKey, key, DrillFile.preset(key)));
        return new InsightDrills(List.copyOf(choices), byKey);
    }

    /** The one that is meant; without a key, the first. */
    Choice chosen(String keyOrNull) {
        if (keyOrNull != null && !byKey.containsKey(keyOrNull)) {
            throw Refusal.notFound("There is no such drill to choose.");
        }
        return keyOrNull == null ? choices.get(0) : byKey.get(keyOrNull);
    }

    /** A drill of the record; null where this version cannot read it. */
    static Drill read(String terms) {
        try {
            return DrillJson.read(terms);
        } catch (BadMessage e) {
            return null;
        }
    }

    private static void add(List<Choice> choices, Map<String, Choice> byKey, String key, Drill drill) {
        Choice known = choices.stream().filter(each -> each.drill.equals(drill)).findFirst().orElse(null);
        if (known == null) {
            known = new Choice(key, drill);
            choices.add(known);
        }
        byKey.put(key, known);
    }
}
