package org.cupbeam.board;

import java.io.IOException;
import java.util.List;

/** All of the product in one process on the board, asked from its own shell. Times are the board's. */
final class BoardStudio {
    private static final int START_WITHIN_S = 600;
    private static final String LEAN = "java -Xmx128m -Xss512k -XX:+UseSerialGC -XX:TieredStopAtLevel=1 ";
    private static final String PAGES = "http://127.0.0.1:8080";
    private static final int KB_PER_MB = 1024;

    private final Machine machine;

    BoardStudio(Machine machine) {
        this.machine = machine;
    }

    /** How long Java takes to do nothing, s. */
    double emptyS() throws IOException, InterruptedException {
        return seconds("cd /lane; " + LEAN + "-cp . org.cupbeam.board.Empty", START_WITHIN_S);
    }

    /** Starts it; returns when it shows a page, after s. */
    double start(String flag) throws IOException, InterruptedException {
        return seconds("cd /lane; " + LEAN + flag + "-jar cupbeam-studio.jar --data /data --lane lane-1=rig.toml"
                + " </dev/null >>/data/log 2>&1 & P=$!; until wget -q -O /dev/null " + PAGES + "/lanes; do usleep 50000; done",
                START_WITHIN_S);
    }

    /** Until its lane reads the pins, which may be a little after the first page. */
    void awaitLane() throws IOException, InterruptedException {
        machine.run("until wget -q -O - " + PAGES + "/api/health | grep -q online; do sleep 1; done; sleep 5", START_WITHIN_S);
    }

    void terminate() throws IOException, InterruptedException {
        machine.run("kill -TERM $P; wait $P", START_WITHIN_S);
    }

    /** All that it has kept; to be done while it does not run. */
    void forget() throws IOException, InterruptedException {
        machine.run("for each in /data/*; do test $each = /data/studio.jsa || rm -rf $each; done", 10);
    }

    String page(String path) throws IOException, InterruptedException {
        return String.join("", machine.run("wget -q -O - '" + PAGES + path + "'; echo", 30).out());
    }

    /** A figure of the whole board's memory, MB. */
    long memoryMb(String name) throws IOException, InterruptedException {
        return mb("grep ^" + name + ": /proc/meminfo");
    }

    /** A figure of its own, MB. */
    long ofProcessMb(String name) throws IOException, InterruptedException {
        return mb("grep ^" + name + ": /proc/$P/status");
    }

    private long mb(String command) throws IOException, InterruptedException {
        List<String> out = machine.run(command, 10).out();
        return Long.parseLong(out.get(out.size() - 1).replaceAll("\\D", "")) / KB_PER_MB;
    }

    private double seconds(String command, int withinS) throws IOException, InterruptedException {
        double fromS = upS();
        machine.run(command, withinS);
        return Math.round((upS() - fromS) * 100) / 100.0;
    }

    private double upS() throws IOException, InterruptedException {
        List<String> out = machine.run("cat /proc/uptime", 10).out();
        return Double.parseDouble(out.get(out.size() - 1).split(" ")[0]);
    }
}
