package org.cupbeam.board;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.file.BadFileException;

/** A rig's sensors on the emulated chip, which has eight lines. */
final class Wiring {
    private Wiring() {
    }

    /** Writes the rig file anew, each channel on the line of its own number; returns the rig as it was. */
    static Rig fit(Path given, Path fitted) throws IOException, BadFileException {
        String text = Files.readString(given);
        Rig rig = RigFile.parse(given.getFileName().toString(), text);
        for (int i = 0; i < rig.channels().size(); i++) {
            text = text.replace("gpio = " + rig.channels().get(i).gpio() + "\n", "gpio = L" + i + "\n");
        }
        Files.writeString(fitted, text.replace("= L", "= "));
        return rig;
    }
}
