package org.cupbeam.studio.sim;

import java.nio.file.Path;

/** A disk that says it has synced and has not: what a lane would be that publishes before it syncs. */
final class ForgetfulDisk extends Disk {
    private Image kept;

    ForgetfulDisk(Path database) {
        super(database);
        kept = image();
    }

    /** What was there when it was last asked, and not what is there now. */
    @Override
    Image synced() {
        Image old = kept;
        kept = image();
        return old;
    }
}
