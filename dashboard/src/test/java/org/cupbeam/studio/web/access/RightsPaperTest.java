package org.cupbeam.studio.web.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.cupbeam.studio.store.staff.Role;
import org.junit.jupiter.api.Test;

/** The owner's guide has the table of rights as the code has it; {@code -Dcupbeam.tables=write} writes it anew. */
class RightsPaperTest {
    private static final Path GUIDE = Path.of("..", "docs", "owner.md");
    private static final boolean WRITES = "write".equals(System.getProperty("cupbeam.tables"));

    @Test
    void theOwnersGuideHasTheTable() throws IOException {
        String text = Files.readString(GUIDE);
        Matcher there = Pattern.compile("(<!-- table rights -->\n)(.*?)(<!-- end rights -->)", Pattern.DOTALL).matcher(text);
        assertThat(there.find()).as("a place for it").isTrue();
        if (WRITES) {
            Files.writeString(GUIDE, text.substring(0, there.end(1)) + table() + text.substring(there.start(3)));
        } else {
            assertThat(there.group(2)).as("-Dcupbeam.tables=write writes it anew").isEqualTo(table());
        }
    }

    private static String table() {
        List<String> lines = new ArrayList<>(List.of("", "| | anybody | desk | coach | owner |", "| --- | --- | --- | --- | --- |"));
        for (Right each : Right.values()) {
            lines.add("| " + each.what() + " | " + yes(each == Right.ANYBODY) + " | " + yes(each.isOf(Role.DESK)) + " | "
                    + yes(each.isOf(Role.COACH)) + " | " + (each == Right.HOST ? "of all studios" : yes(each.isOf(Role.OWNER))) + " |");
        }
        assertThat(Arrays.asList(Role.values())).as("a role more is a column more").hasSize(3);
        return String.join("\n", lines) + "\n\n";
    }

    private static String yes(boolean may) {
        return may ? "yes" : "";
    }
}
