package org.cupbeam.edge.board;

import com.pi4j.library.gpiod.internal.GpioDContext;
import com.pi4j.library.gpiod.internal.GpioLine;
import com.pi4j.library.gpiod.internal.GpioLineEvent;
import com.pi4j.library.gpiod.internal.LineEvent;
import com.pi4j.library.gpiod.internal.LineRequestFlag;
import org.cupbeam.rig.Channel;

/**
 * A Raspberry Pi's lines, by the library below Pi4J's gpiod provider. The provider itself throws the kernel's time stamp
 * away, swallows pulses shorter than its debounce, and in 2.8.0 may leave an input dead without a word.
 */
final class GpiodLines implements LineOpener {
    private static final String CONSUMER = "cupbeam";
    private static final int NANOSECOND_BITS_MIN = 64;

    private final GpioDContext context;

    private GpiodLines(GpioDContext context) {
        this.context = context;
    }

    static GpiodLines open() throws BoardException {
        if (Integer.getInteger("sun.arch.data.model", NANOSECOND_BITS_MIN) < NANOSECOND_BITS_MIN) {
            throw new BoardException("this is a 32-bit system, on which the kernel's time stamps do not fit;"
                    + " a 64-bit Raspberry Pi OS would do", null);
        }
        return new GpiodLines(board());
    }

    /** The pins of the machine that this runs on, for whoever reads or drives some. */
    static GpioDContext board() throws BoardException {
        try {
            GpioDContext context = GpioDContext.getInstance();
            context.initialize();
            context.getOrOpenLine(0); // opens nothing yet, but throws where no board was found
            return context;
        } catch (RuntimeException | LinkageError noBoard) {
            throw new BoardException("there are no pins here that can be read or driven (" + noBoard.getMessage()
                    + "); a Raspberry Pi with a 64-bit system would do", noBoard);
        }
    }

    @Override
    public LinePort open(Channel channel) {
        GpioLine line = context.getOrOpenLine(channel.gpio());
        line.requestBothEdgeEventsFlags(CONSUMER + "-" + channel.name(), flag(channel.pull()));
        return new Port(context, line, context.openLineEvent());
    }

    private static int flag(Channel.Pull pull) {
        return switch (pull) {
            case UP -> LineRequestFlag.BIAS_PULL_UP.getVal();
            case DOWN -> LineRequestFlag.BIAS_PULL_DOWN.getVal();
            case OFF -> LineRequestFlag.BIAS_DISABLE.getVal();
        };
    }

    private record Port(GpioDContext context, GpioLine line, GpioLineEvent event) implements LinePort {
        @Override
        public boolean isHigh() {
            return line.getValue() != 0;
        }

        @Override
        public boolean await(long timeoutNs) {
            return line.eventWait(timeoutNs);
        }

        @Override
        public boolean hasEdge() {
            return line.eventWait(0); // a poll(2) of its descriptor, which any thread may do
        }

        @Override
        public void read() {
            line.eventRead(event);
        }

        @Override
        public boolean rising() {
            return event.getType() == LineEvent.RISING_EDGE;
        }

        @Override
        public long timeNs() {
            return event.getTimeNs();
        }

        @Override
        public void close() {
            context.closeLineEvent(event);
            context.closeLine(line);
        }
    }
}
