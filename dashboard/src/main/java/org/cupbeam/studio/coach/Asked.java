package org.cupbeam.studio.coach;

import org.cupbeam.studio.insight.Question;

/** What is asked, and of whom. */
public record Asked(int player, Question question) {
}
