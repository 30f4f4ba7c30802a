package org.cupbeam.studio.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** The processor time of other processes, as Linux counts it: in hundredths of a second, so over many questions. */
final class ProcessorTime {
    private static final int MS_PER_TICK = 10; // USER_HZ is 100 wherever Java runs on Linux
    private static final int USER = 11;        // fields of /proc/PID/stat after the command's name, proc(5)
    private static final int CHILDREN_SYSTEM = 14;

    private ProcessorTime() {
    }

    /** Of a process, its threads that have ended included, and of all that it has begun, those that have ended included. */
    static double ms(ProcessHandle process) {
        return Stream.concat(Stream.of(process), process.descendants()).mapToLong(ProcessorTime::ticks).sum() * MS_PER_TICK;
    }

    private static long ticks(ProcessHandle process) {
        try {
            String stat = Files.readString(Path.of("/proc", "" + process.pid(), "stat"));
            String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
            long sum = 0;
            for (int i = USER; i <= CHILDREN_SYSTEM; i++) {
                sum += Long.parseLong(fields[i]);
            }
            return sum;
        } catch (IOException ended) {
            return 0; // its parent has it among what ended
        }
    }
}
