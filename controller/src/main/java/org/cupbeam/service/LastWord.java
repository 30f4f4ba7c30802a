package org.cupbeam.service;

import java.util.function.IntConsumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What becomes of a thread that ended by something which nobody caught. An {@link Error}, such as no memory left, leaves the rest of
 * the program without a thread that it counts on, and alive all the same: so the program ends, and whoever keeps it running starts
 * it again. An exception is told, and the rest goes on: libraries have threads of their own that come back.
 */
public final class LastWord implements Thread.UncaughtExceptionHandler {
    /** A fault of its own. */
    static final int STATUS = 1;
    private static final Logger LOG = LoggerFactory.getLogger(LastWord.class);

    private final IntConsumer end;

    /** @param end ends the program at once with a status */
    LastWord(IntConsumer end) {
        this.end = end;
    }

    /** For all threads of this process that have nobody else. */
    public static void ofThisProcess() {
        Thread.setDefaultUncaughtExceptionHandler(new LastWord(Runtime.getRuntime()::halt));
    }

    @Override
    public void uncaughtException(Thread thread, Throwable why) {
        if (!(why instanceof Error)) {
            LOG.error("the thread {} has ended by a fault; please report it with what follows", thread.getName(), why);
            return;
        }
        try {
            LOG.error("the thread {} has ended ({}), and so does the program, to be started again", thread.getName(), why.toString());
        } finally {
            end.accept(STATUS); // also where there is no memory left to say anything
        }
    }
}
