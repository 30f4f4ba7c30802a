package org.cupbeam.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/**
 * The worst that was found for each reader, at the longest that it takes, in a heap of 24 MB: three quarters of the one that a
 * lane is given (docs/performance.md).
 */
class BoundedHeapTest {
    /** What makes tomlj allocate most: errors, tables, errors of characters, values. */
    private static final List<String> TOML = List.of("=\n", "[a%d]\n", "k%d[a]\n", "é", "a%d = [1,1,1,1]\n", "[[a]]\n", "[", "a.",
            "\"\\E\"=", "x = [", "x={a=", "a='''", "]\n", "\\\n");
    private static final List<String> JSON = List.of("[", "{\"a\":", "{\"k%d\":1,", "[1,", "[{},", "[\"\\u0000\",", "{\"\":[", "\"", "1");
    private static final List<String> TRACE = List.of("$var wire 1 c%d n%d $end ", "x", "$comment ", "$timescale ", "$var 1 ", "# ", "\n",
            "META ");

    @Test
    void theWorstThatThereIsFitsInTwentyFourMegabytes() throws Exception {
        Process java = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx24m",
                "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"),
                BoundedHeapTest.class.getName()).redirectErrorStream(true).start();
        String said = new String(java.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(java.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(said).endsWith("all were taken or refused\n");
    }

    public static void main(String[] none) throws Throwable {
        feed(new RigTarget(), TOML, 32 * 1024);
        feed(new DrillTarget(), TOML, 32 * 1024);
        feed(new MessageTarget(), JSON, 64 * 1024);
        feed(new TraceTarget(), TRACE, 1 << 20);
        System.out.println("all were taken or refused");
    }

    private static void feed(Target target, List<String> parts, int bytes) throws Throwable {
        for (String part : parts) {
            target.take(filled(part, bytes));
        }
        for (byte[] good : target.seeds()) {
            target.take(good);
        }
    }

    private static byte[] filled(String part, int bytes) {
        byte[] filled = new byte[bytes];
        for (int at = 0, i = 0; at < bytes; i++) {
            byte[] next = part.replace("%d", Integer.toString(i)).getBytes(StandardCharsets.UTF_8);
            System.arraycopy(next, 0, filled, at, Math.min(next.length, bytes - at));
            at += next.length;
        }
        return filled;
    }
}
