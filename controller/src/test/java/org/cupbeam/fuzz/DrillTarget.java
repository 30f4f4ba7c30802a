package org.cupbeam.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.DrillJson;
import org.cupbeam.rig.file.BadFileException;

/** A drill file; what is a drill can be written as one again, and sent. */
public final class DrillTarget extends TomlTarget {
    @Override
    public String name() {
        return "drill";
    }

    @Override
    public List<byte[]> seeds() {
        return Stream.concat(DrillFile.presets().stream().map(DrillFile::presetText), Stream.of("""
                name = "Spots"
                stations.at_mm = [1200, 1800.5, 2400]
                [balls]
                count = 3
                supply = "whole-run"
                [advance]
                holed = 2
                [overshoot]
                limit_mm = 267
                penalty = "back-one"
                [duel]
                turns = "ball"
                """)).map(each -> each.getBytes(StandardCharsets.UTF_8)).toList();
    }

    @Override
    public List<String> words() {
        return List.of("name", "[stations]", "first_mm", "step_mm", "count", "at_mm", "[balls]", "supply", "\"whole-run\"",
                "\"every-station\"", "[advance]", "holed", "[overshoot]", "limit_mm", "penalty", "\"none\"", "\"lose-ball\"",
                "\"back-one\"", "\"end-run\"", "[duel]", "turns", "\"station\"", "\"ball\"", "[1000, 2000]", "[]", "{}",
                "50000", "100", "1e-300", "inf", "nan", "0x1F", " = ", "1979-05-27", "'''", "\"\\E\"");
    }

    @Override
    void read(Path file) throws BadFileException {
        Drill drill = DrillFile.read(file);
        assertThat(DrillFile.parse("drill.toml", DrillFile.text(drill))).isEqualTo(drill);
        try {
            assertThat(DrillJson.read(DrillJson.text(drill))).isEqualTo(drill);
        } catch (BadMessage e) {
            throw new AssertionError("a drill that cannot be sent: " + e.getMessage(), e);
        }
    }
}
