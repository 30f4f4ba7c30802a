package org.cupbeam.edge.trace;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.LongConsumer;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Rig;

/**
 * Reads the edges of a rig's wires from a Value Change Dump (IEEE 1364-2005, clause 18), whoever wrote it. It streams, and
 * allocates nothing per edge.
 *
 * <ul>
 * <li>Every wire starts inactive: a first value that is active is an edge, one that repeats the state never is.
 * <li>An unknown value (x, z, and what {@code $dumpoff} writes) claims nothing: the wire keeps its last known state.
 * <li>Signals that the rig does not have are passed over; a wire of the rig that the trace lacks is an error.
 * <li>Times finer than a nanosecond are cut to it.
 * </ul>
 */
public final class VcdReader implements Closeable {
    /** What {@link #next} came to. */
    public enum Step {
        /** An edge: {@link #channel}, {@link #active} and {@link #timeNs} tell it. */
        EDGE,
        /** Of a growing trace, all that there is for now has been read; {@link #timeNs} is where it has got to. */
        PAUSE,
        /** The trace is at its end, and {@link #timeNs} is its last time, which may be later than its last edge. */
        END
    }

    private enum Awaits { ANYTHING, END_OF_COMMENT, CODE_OF_BIT, CODE_OF_OTHER }

    private final InputStream in;
    private final Tokens word;
    private final Definitions definitions;
    private final boolean[] state;
    private VcdClock clock;
    private Awaits awaits = Awaits.ANYTHING;
    private byte pendingBit;
    private int channel = -1;

    /**
     * Reads a trace of which {@code in} has all, or waits for more itself.
     *
     * @param name what errors call it
     */
    public VcdReader(InputStream in, String name, Rig rig) {
        this(in, name, rig, false);
    }

    private VcdReader(InputStream in, String name, Rig rig, boolean growing) {
        this.in = in;
        word = new Tokens(in, name, growing);
        definitions = new Definitions(rig);
        state = new boolean[rig.channels().size()];
    }

    /** Opens a whole trace. */
    public static VcdReader open(Path trace, Rig rig) throws IOException {
        return new VcdReader(Files.newInputStream(trace), trace.toString(), rig);
    }

    /** Opens a trace that is still being written: where it ends for now, {@link #next} pauses, and may be called again. */
    public static VcdReader follow(Path trace, Rig rig) throws IOException {
        return new VcdReader(new GrowingFile(trace), trace.toString(), rig, true);
    }

    /** Calls the listener with the bytes read so far, now and then. */
    public void onProgress(LongConsumer bytesSoFar) {
        word.onProgress(bytesSoFar);
    }

    /**
     * Reads on to the next edge.
     *
     * @throws TraceException where the trace makes no sense; nothing can be read after it
     */
    public Step next() throws IOException {
        while (true) {
            switch (word.next()) {
                case NOTHING_YET:
                    return Step.PAUSE;
                case END:
                    checkEnd();
                    return Step.END;
                default:
                    if (clock == null) {
                        define();
                    } else if (awaits == Awaits.ANYTHING ? take() : takeAwaited()) {
                        return Step.EDGE;
                    }
            }
        }
    }

    /** Hands on all edges that there are, then says whether it paused or came to the end. */
    public Step drainTo(EdgeSink sink) throws IOException {
        Step step = next();
        while (step == Step.EDGE) {
            sink.edge(channel, state[channel], clock.timeNs());
            step = next();
        }
        return step;
    }

    /** The edge's channel in the rig. */
    public int channel() {
        return channel;
    }

    /** Whether the edge was to active. */
    public boolean active() {
        return state[channel];
    }

    /** The last time read, in ns from the trace's zero. */
    public long timeNs() {
        return clock == null ? 0 : clock.timeNs();
    }

    @Override
    public void close() throws IOException {
        in.close();
    }

    private void define() throws TraceException {
        definitions.take(word);
        if (definitions.complete()) {
            clock = new VcdClock(definitions.timescale());
        }
    }

    /** Takes a word after the definitions; true where it was an edge. */
    private boolean take() throws TraceException {
        byte first = word.bytes[word.from];
        switch (first) {
            case '#':
                clock.advance(word);
                return false;
            case '0', '1':
                return change(meaning(word.from + 1), first == '1');
            case 'x', 'X', 'z', 'Z':
                meaning(word.from + 1);
                return false;
            case 'b', 'B':
                pendingBit = word.bytes[word.to - 1];
                awaits = Awaits.CODE_OF_BIT;
                return false;
            case 'r', 'R', 's', 'S':
                awaits = Awaits.CODE_OF_OTHER;
                return false;
            case '$':
                directive();
                return false;
            default:
                throw word.wrong(word.isText() ? '"' + word.shown(word.from)
                        + "\" is neither a time (#…) nor a value (0, 1, x, z, b… or r…)" : word.notText());
        }
    }

    /** Takes a word that the one before has said something about; true where it was an edge. */
    private boolean takeAwaited() throws TraceException {
        if (awaits == Awaits.END_OF_COMMENT) {
            awaits = word.is("$end") ? Awaits.ANYTHING : awaits;
            return false;
        }
        int meaning = meaning(word.from);
        boolean bit = awaits == Awaits.CODE_OF_BIT && (pendingBit == '0' || pendingBit == '1');
        awaits = Awaits.ANYTHING;
        return bit && change(meaning, pendingBit == '1');
    }

    private boolean change(int meaning, boolean active) {
        if (meaning < 0 || state[meaning] == active) {
            return false;
        }
        state[meaning] = active;
        channel = meaning;
        return true;
    }

    private int meaning(int codeFrom) throws TraceException {
        if (codeFrom == word.to) {
            throw word.wrong('"' + word.shown(word.from) + "\" lacks the code of its signal; none may stand apart from its value");
        }
        int meaning = definitions.codes().get(word.bytes, codeFrom, word.to);
        if (meaning == IdCodes.UNKNOWN) {
            throw word.wrong("no signal has the code \"" + word.shown(codeFrom) + '"');
        }
        return meaning;
    }

    private void directive() throws TraceException {
        if (word.is("$comment") || word.is("$vcdclose")) {
            awaits = Awaits.END_OF_COMMENT;
        } else if (!(word.is("$end") || word.is("$dumpvars") || word.is("$dumpall")
                || word.is("$dumpon") || word.is("$dumpoff"))) {
            throw word.wrong(word.shown(word.from) + " has no meaning after $enddefinitions;"
                    + " $comment, $dumpvars, $dumpall, $dumpon and $dumpoff have");
        }
    }

    private void checkEnd() throws TraceException {
        if (clock == null) {
            throw word.wrong("the trace ends before $enddefinitions");
        }
        if (awaits != Awaits.ANYTHING) {
            throw word.wrong(awaits == Awaits.END_OF_COMMENT ? "the trace ends in a $comment that lacks its $end"
                    : "the trace ends between a value and the code of its signal");
        }
    }
}
