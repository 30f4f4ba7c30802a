package org.cupbeam.studio.web;

import com.sun.management.OperatingSystemMXBean;
import com.sun.management.UnixOperatingSystemMXBean;
import io.prometheus.metrics.model.snapshots.MetricSnapshots;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;

/** What the host's process takes, as far as Java knows. */
final class ProcessMetrics {
    private static final double MS_PER_S = 1e3;
    private static final double NS_PER_S = 1e9;

    private ProcessMetrics() {
    }

    static void addTo(MetricSnapshots.Builder all) {
        long collectedMs = ManagementFactory.getGarbageCollectorMXBeans().stream()
                .mapToLong(GarbageCollectorMXBean::getCollectionTime).sum();
        all.metricSnapshot(Metrics.gauge("cupbeam_process_heap_bytes", "Heap that is used",
                        ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed()))
                .metricSnapshot(Metrics.counter("cupbeam_process_collecting_seconds", "Spent on collecting garbage",
                        collectedMs / MS_PER_S))
                .metricSnapshot(Metrics.gauge("cupbeam_process_threads", "Threads",
                        ManagementFactory.getThreadMXBean().getThreadCount()))
                .metricSnapshot(Metrics.gauge("cupbeam_process_up_seconds", "Since its start",
                        ManagementFactory.getRuntimeMXBean().getUptime() / MS_PER_S));
        if (ManagementFactory.getOperatingSystemMXBean() instanceof OperatingSystemMXBean system) {
            all.metricSnapshot(Metrics.counter("cupbeam_process_cpu_seconds", "Processor time",
                    system.getProcessCpuTime() / NS_PER_S));
        }
        if (ManagementFactory.getOperatingSystemMXBean() instanceof UnixOperatingSystemMXBean system) {
            all.metricSnapshot(Metrics.gauge("cupbeam_process_open_files", "Files and connections that are open",
                    system.getOpenFileDescriptorCount()));
        }
    }
}
