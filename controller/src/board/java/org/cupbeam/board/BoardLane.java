package org.cupbeam.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.edge.trace.VcdReader;
import org.cupbeam.event.Health;
import org.cupbeam.rig.Rig;

/** The controller's commands, on the board. An emulated processor takes some 12 s to start Java and it. */
final class BoardLane {
    private static final int START_WITHIN_S = 120;
    private static final String JAVA = "cd /lane; java -Xmx64m -XX:+UseSerialGC -XX:TieredStopAtLevel=1"
            + " -jar cupbeam-controller.jar ";
    private static final String APART = " </dev/null >>/tmp/log 2>&1 & P=$!";

    private final Machine machine;

    BoardLane(Machine machine) {
        this.machine = machine;
    }

    /** Starts the lane; returns when it is online, after s. */
    double start(int port, Listener listener) throws IOException, InterruptedException {
        long before = listener.health() == null ? 0 : listener.health().connection();
        long fromNs = System.nanoTime();
        machine.run(JAVA + "lane --rig rig.toml --drill ladder.toml --players ann --data /data --broker tcp://"
                + Machine.HOST + ":" + port + APART, 10);
        listener.await("the lane is online: " + fromNs, START_WITHIN_S, () -> listener.health() != null
                && listener.health().state() == Health.State.ONLINE && listener.health().connection() > before);
        return (System.nanoTime() - fromNs) * 1e-9;
    }

    /** SIGTERM; the status it ended with. */
    int terminate() throws IOException, InterruptedException {
        return machine.run("kill -TERM $P; wait $P", 60).status();
    }

    /** Its journal, and with it the run that went on; to be done while it does not run. */
    void forget() throws IOException, InterruptedException {
        machine.run("rm -rf /data/*", 10);
    }

    void freeze() throws IOException, InterruptedException {
        machine.run("kill -STOP $P", 10);
    }

    void thaw() throws IOException, InterruptedException {
        machine.run("kill -CONT $P", 10);
    }

    /** Plays edges while {@code record} runs, and gives what it wrote: the kernel's stamps. */
    List<Edge> record(Rig rig, Recorded played) throws IOException, InterruptedException {
        machine.run("rm -f /tmp/recorded.vcd /tmp/log", 10); // of the time before
        machine.run(JAVA + "record --rig rig.toml /tmp/recorded.vcd" + APART, 10);
        for (int i = 0; machine.run("grep -q 'recording to' /tmp/log", 10).status() != 0; i++) {
            assertThat(i).as("tries until the lines are open").isLessThan(START_WITHIN_S);
            TimeUnit.SECONDS.sleep(1);
        }
        TimeUnit.SECONDS.sleep(4);
        played.play();
        TimeUnit.SECONDS.sleep(1);
        terminate();
        String vcd = String.join("\n", machine.run("cat /tmp/recorded.vcd", 30).out()) + "\n";
        return Edge.of(new VcdReader(new ByteArrayInputStream(vcd.getBytes(StandardCharsets.UTF_8)), "recorded.vcd", rig),
                Long.MAX_VALUE);
    }

    /** What happens to the lines meanwhile. */
    interface Recorded {
        void play() throws IOException, InterruptedException;
    }

    List<String> log() throws IOException, InterruptedException {
        return machine.run("cat /tmp/log /proc/interrupts /sys/kernel/debug/gpio", 30).out();
    }
}
