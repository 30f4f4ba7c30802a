package org.cupbeam.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.file.BadFileException;

/** A rig file. */
public final class RigTarget extends TomlTarget {
    static final String RIG = """
            # lengths in mm
            [green]
            stimp_ft = 10.5
            uphill_percent = -0.5
            side_percent = 1
            [overshoot]
            limit_mm = 914.4
            [cup]
            gpio = 17
            active = "low"
            [strike]
            gpio = 18
            [pedal]
            gpio = 27
            pull = "up"
            [lamp]
            gpio = 6
            [[beam]]
            name = "past-1"
            gpio = 5
            position_mm = 914.4
            height_mm = 21.0
            [[beam]]
            name = 'past-2'
            gpio = 13
            position_mm = 974.4
            height_mm = 21
            """;

    @Override
    public String name() {
        return "rig";
    }

    @Override
    public List<byte[]> seeds() {
        return List.of(RIG.getBytes(StandardCharsets.UTF_8),
                "green={stimp_ft=9,uphill_percent=0}\novershoot.limit_mm=267\ncup={gpio=0}".getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public List<String> words() {
        return List.of("[green]", "[overshoot]", "[cup]", "[strike]", "[pedal]", "[lamp]", "[[beam]]", "[beam]", "[[cup]]",
                "stimp_ft", "uphill_percent", "side_percent", "limit_mm", "gpio", "name", "position_mm", "height_mm",
                "active", "pull", "\"high\"", "\"low\"", "\"off\"", "inf", "nan", "1979-05-27", "07:32:00", "0x1F", "{}",
                "[]", "\"cup\"", " = ", "\"\"", "''", "[a.\"b\".c]", "\"\\E\"", "\"\\u12\"", "#");
    }

    @Override
    void read(Path file) throws BadFileException {
        Rig rig = RigFile.read(file);
        assertThat(rig.channels()).hasSizeBetween(1, 54);
        assertThat(rig.stimpFt()).isBetween(3.0, 20.0);
        assertThat(rig.limitMm()).isBetween(54.0, 10_000.0);
    }
}
