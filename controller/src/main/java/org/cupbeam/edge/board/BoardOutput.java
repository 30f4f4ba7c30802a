package org.cupbeam.edge.board;

import com.pi4j.library.gpiod.internal.GpioDContext;
import com.pi4j.library.gpiod.internal.GpioLine;

/** One of this board's pins that something hangs on, driven high or low. */
public final class BoardOutput implements AutoCloseable {
    private final GpioDContext context;
    private final GpioLine line;

    private BoardOutput(GpioDContext context, GpioLine line) {
        this.context = context;
        this.line = line;
    }

    /**
     * Takes hold of a pin, which is low from then on.
     *
     * @param gpio the SoC's line number (BCM)
     * @throws BoardException where there is no such pin to be had
     */
    public static BoardOutput open(int gpio) throws BoardException {
        GpioDContext context = GpiodLines.board();
        try {
            GpioLine line = context.getOrOpenLine(gpio);
            line.requestOutput("cupbeam-lamp", 0);
            return new BoardOutput(context, line);
        } catch (RuntimeException | LinkageError notThere) {
            throw new BoardException("GPIO " + gpio + " cannot be driven (" + notThere.getMessage()
                    + "); see that nothing else uses it, or leave it out of the rig file", notThere);
        }
    }

    public void set(boolean high) {
        line.setValue(high ? 1 : 0);
    }

    @Override
    public void close() {
        line.setValue(0);
        context.closeLine(line);
    }
}
