package org.cupbeam.studio.sim;

import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.file.BadFileException;

/** What is fitted: a cup, a pedal, and a beam past the hole. */
final class Green {
    static final double LIMIT_MM = 914.4;
    static final Rig RIG = rig();

    private Green() {
    }

    private static Rig rig() {
        try {
            return RigFile.parse("rig.toml", """
                    [green]
                    stimp_ft = 10
                    uphill_percent = 0
                    [overshoot]
                    limit_mm = 914.4
                    [cup]
                    gpio = 17
                    [pedal]
                    gpio = 27
                    [[beam]]
                    name = "past"
                    gpio = 5
                    position_mm = 914.4
                    height_mm = 21
                    """);
        } catch (BadFileException e) {
            throw new AssertionError(e);
        }
    }
}
