package org.cupbeam.board;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/**
 * What the board's kernel took of its lines while the lane had them open, from the kernel's own trace: when each interrupt came, which
 * is when the lane's stamp is made, and the level that was read after it. A line of the lane's is named after its channel.
 */
final class Kernel {
    private static final String TRACE = "/sys/kernel/tracing";
    private static final Pattern INTERRUPTED = Pattern.compile(" (\\d+)\\.(\\d{6}): irq_handler_entry: irq=(\\d+) name=cupbeam-(\\S+)");
    private static final Pattern READ = Pattern.compile("irq/(\\d+)-.*: gpio_value: \\d+ get ([01])");

    private final Machine machine;
    private final Map<String, Integer> channels = new HashMap<>();

    /** Has the kernel of a machine that has just booted trace its lines. */
    Kernel(Machine machine, Rig rig) throws IOException, InterruptedException {
        this.machine = machine;
        List<Channel> all = rig.channels();
        IntStream.range(0, all.size()).forEach(i -> channels.put(all.get(i).name(), i));
        int status = machine.run("T=" + TRACE + "; mount -t tracefs tracefs $T && echo mono > $T/trace_clock"
                + " && echo 'name ~ \"cupbeam-*\"' > $T/events/irq/irq_handler_entry/filter"
                + " && echo 'COMM ~ \"irq/*\"' > $T/events/gpio/gpio_value/filter"
                + " && echo 1 > $T/events/irq/irq_handler_entry/enable && echo 1 > $T/events/gpio/gpio_value/enable", 10).status();
        if (status != 0) {
            throw new IOException("the board's kernel does not trace its lines, status " + status);
        }
    }

    /** Forgets what was taken until now. */
    void forget() throws IOException, InterruptedException {
        machine.run("echo > " + TRACE + "/trace", 10);
    }

    /** Each edge that was taken since, in their order, by the kernel's monotonic clock; without those whose level was not read. */
    List<Edge> taken() throws IOException, InterruptedException {
        List<Edge> taken = new ArrayList<>();
        Map<String, Edge> unread = new HashMap<>();
        for (String line : machine.run("cat " + TRACE + "/trace", 30).out()) {
            Matcher interrupted = INTERRUPTED.matcher(line);
            Matcher read = READ.matcher(line);
            if (interrupted.find()) {
                long timeNs = Long.parseLong(interrupted.group(1) + interrupted.group(2)) * 1_000;
                unread.put(interrupted.group(3), new Edge(channels.get(interrupted.group(4)), false, timeNs));
            } else if (read.find()) {
                Edge edge = unread.remove(read.group(1));
                if (edge != null) {
                    taken.add(new Edge(edge.channel(), read.group(2).equals("1"), edge.timeNs()));
                }
            }
        }
        taken.sort(Comparator.comparingLong(Edge::timeNs));
        return taken;
    }
}
