package org.cupbeam.studio.coach;

import java.util.List;
import org.cupbeam.studio.insight.Question;

/** What is asked, and of whom. @param lanes on which they putted; null for any */
public record Asked(int player, List<Integer> lanes, Question question) {
    /** Of all that they putted. */
    public Asked(int player, Question question) {
        this(player, null, question);
    }
}
