package org.cupbeam.bench;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/**
 * What one operation came to, beside its time. The processor's time, not the wall's, tells what one core does where cores
 * are shared; and what the thread itself allocated leaves out what the harness did.
 */
@State(Scope.Thread)
@AuxCounters(AuxCounters.Type.OPERATIONS)
public class Meter {
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    /** Edges. */
    public long edges;
    /** Attempts. */
    public long attempts;
    /** Processor time, ns. */
    public long cpuNs;
    /** Bytes that the thread allocated. */
    public long ownBytes;

    private long thread;
    private long cpuBefore;
    private long bytesBefore;

    void begin() {
        thread = Thread.currentThread().getId();
        bytesBefore = THREADS.getThreadAllocatedBytes(thread);
        cpuBefore = THREADS.getCurrentThreadCpuTime();
    }

    void end(long moreEdges, long moreAttempts) {
        cpuNs += THREADS.getCurrentThreadCpuTime() - cpuBefore;
        ownBytes += THREADS.getThreadAllocatedBytes(thread) - bytesBefore;
        edges += moreEdges;
        attempts += moreAttempts;
    }
}
