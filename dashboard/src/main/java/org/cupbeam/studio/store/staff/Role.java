package org.cupbeam.studio.store.staff;

import org.cupbeam.drill.Worded;

/** What somebody of the staff is; what that may do is told in one place, {@code web.access.Right}. */
public enum Role implements Worded {
    OWNER, COACH, DESK
}
