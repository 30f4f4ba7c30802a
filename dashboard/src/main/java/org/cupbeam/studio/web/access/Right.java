package org.cupbeam.studio.web.access;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.cupbeam.studio.store.staff.Role;

/** What somebody may do, and who: the one table of it. Each address asks for one of these. */
public enum Right {
    /** Whoever reaches the host. */
    ANYBODY("see boards and the list of lanes; learn whether the host lives", Role.values()),
    LOOK("see lanes, rigs and greens, players and their runs; make a card; change one's own secret", Role.values()),
    PLAY("start and end a game on a lane", Role.values()),
    PLAYERS("add a player; write name, hand, units and remark", Role.values()),
    USAGE("see how the lanes are used", Role.OWNER, Role.DESK),
    COACH("during a game enter, take back, leave out, pass on; insight, reports, notes; what counts and whose a run is; "
            + "merging players; drills; leagues; a green's range and tests; what was put right", Role.OWNER, Role.COACH),
    EXPORT("take the record and usage along as files", Role.OWNER),
    FORGET("forget a player", Role.OWNER),
    STAFF("say who signs in, as what, for which studios", Role.OWNER),
    /** What is the whole host's, whichever studios there are. */
    HOST("the PIN, opening hours and time zone, bringing files in, the host's metrics", Role.OWNER);

    private final String what;
    private final Set<Role> roles;

    Right(String what, Role... roles) {
        this.what = what;
        this.roles = Set.of(roles);
    }

    /** In words, for people. */
    public String what() {
        return what;
    }

    /** Whether somebody of that role has it; {@link #HOST} only those who look after all studios. */
    public boolean isOf(Role role) {
        return roles.contains(role);
    }

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Who may, in words. */
    public String who() {
        List<String> all = Arrays.stream(Role.values()).filter(roles::contains).map(each -> each.word()).toList();
        return this == HOST ? "an owner of all studios" : all.stream().map(each -> (each.startsWith("o") ? "an " : "a ") + each)
                .collect(Collectors.joining(" or "));
    }
}
