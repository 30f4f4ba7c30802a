package org.cupbeam.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class LastWordTest {
    private final List<Integer> ended = new ArrayList<>();
    private final LastWord word = new LastWord(ended::add);

    @Test
    void anErrorInAnyThreadEndsTheProgramAndAnExceptionDoesNot() {
        word.uncaughtException(Thread.currentThread(), new IllegalStateException("of a library"));
        assertThat(ended).isEmpty();
        word.uncaughtException(Thread.currentThread(), new StackOverflowError());
        assertThat(ended).containsExactly(LastWord.STATUS);
    }

    /** A real process, whose main thread waits for ever, and another of whose threads takes all memory there is. */
    @Test
    void aProcessOutOfMemoryIsGoneAndNotHalfAlive() throws Exception {
        Process java = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx16m",
                "-cp", System.getProperty("java.class.path"), Hungry.class.getName()).redirectErrorStream(true).start();
        try {
            assertThat(java.waitFor(60, TimeUnit.SECONDS)).as("it ends").isTrue();
            assertThat(java.exitValue()).isEqualTo(LastWord.STATUS);
        } finally {
            java.destroyForcibly();
        }
    }

    static final class Hungry {
        public static void main(String[] args) throws InterruptedException {
            LastWord.ofThisProcess();
            new Thread(() -> {
                List<byte[]> all = new ArrayList<>();
                while (true) {
                    all.add(new byte[1 << 16]);
                }
            }, "hungry").start();
            Thread.sleep(Long.MAX_VALUE);
        }
    }
}
