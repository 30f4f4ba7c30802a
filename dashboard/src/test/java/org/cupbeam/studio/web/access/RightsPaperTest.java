package org.cupbeam.studio.web.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cupbeam.studio.docs.Tables;
import org.cupbeam.studio.store.staff.Role;
import org.junit.jupiter.api.Test;

/** The owner's guide has the table of rights as the code has it; {@code -Dcupbeam.tables=write} writes it anew. */
class RightsPaperTest {
    private static final Path GUIDE = Path.of("..", "docs", "owner.md");

    @Test
    void theOwnersGuideHasTheTable() throws IOException {
        Tables.holds(GUIDE, "rights", table());
    }

    private static List<String> table() {
        List<String> lines = new ArrayList<>(List.of("| | anybody | desk | coach | owner |", "| --- | --- | --- | --- | --- |"));
        for (Right each : Right.values()) {
            lines.add("| " + each.what() + " | " + yes(each == Right.ANYBODY) + " | " + yes(each.isOf(Role.DESK)) + " | "
                    + yes(each.isOf(Role.COACH)) + " | " + (each == Right.HOST ? "of all studios" : yes(each.isOf(Role.OWNER))) + " |");
        }
        assertThat(Arrays.asList(Role.values())).as("a role more is a column more").hasSize(3);
        return lines;
    }

    private static String yes(boolean may) {
        return may ? "yes" : "";
    }
}
