package org.cupbeam.edge.board;

import java.util.List;
import java.util.stream.IntStream;
import org.cupbeam.rig.Channel;

/** Lines that are pulled and read at times that a test chooses, in ns after they were opened. */
final class ThreeLines {
    private final FakeClock clock = new FakeClock();
    final long startNs = clock.nowNs;
    final List<FakeLine> wires = List.of(new FakeLine(clock), new FakeLine(clock), new FakeLine(clock));
    final List<LineReader> readers = IntStream.range(0, wires.size()).mapToObj(i -> new LineReader(
            new Channel("line-" + i, Channel.Kind.BEAM, i, Channel.Level.HIGH, Channel.Pull.UP),
            wires.get(i), new EdgeRing(1024), clock, pauseNs -> { })).toList();

    ThreeLines() {
        readers.forEach(LineReader::turn);
    }

    /** The kernel has an edge of a line. */
    void stamped(int line, boolean high, long atNs) {
        wires.get(line).set(high, startNs + atNs);
    }

    /** The line's reader comes round. */
    void read(int line, long atNs) {
        clock.nowNs = startNs + atNs;
        readers.get(line).turn();
    }

    long late(int line) {
        return readers.get(line).counters().health("").late();
    }
}
