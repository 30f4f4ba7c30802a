package org.cupbeam.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Predicate;
import org.cupbeam.commission.Course;
import org.cupbeam.commission.Step;

/** A course on a terminal, in plain lines: whatever comes first, an edge or an answer, is taken next. */
final class Dialogue {
    private static final int WAITING_MAX = 20_000;

    private final Bench bench;
    private final BufferedReader in;
    private final PrintWriter out;
    private final BlockingQueue<Runnable> queue = new LinkedBlockingQueue<>(WAITING_MAX);
    private final StringBuilder asked = new StringBuilder();
    private Course course;
    private Predicate<String> finish;
    private boolean begun;
    private boolean toldLines;
    private boolean over;

    Dialogue(Bench bench, BufferedReader in, PrintWriter out) {
        this.bench = bench;
        this.in = in;
        this.out = out;
    }

    void say(String line) {
        out.println("  " + line);
    }

    /** @param finish takes what is typed once all steps are done, and says whether that was the end */
    void run(Course led, Predicate<String> finish) throws InterruptedException {
        course = led;
        this.finish = finish;
        bench.start(course, queue);
        Thread reader = new Thread(this::read, "answers");
        reader.setDaemon(true);
        reader.start();
        ask();
        while (!over) {
            queue.take().run();
            ask();
        }
    }

    private void read() {
        try {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                String typed = line;
                queue.put(() -> typed(typed));
            }
            queue.put(() -> end("The input has ended."));
        } catch (IOException unreadable) {
            queue.offer(() -> end("The terminal cannot be read: " + unreadable.getMessage()));
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
        }
    }

    /** Asks once at each step. */
    private void ask() {
        String prompt = course.prompt();
        if (!over && !prompt.contentEquals(asked)) {
            if (begun && !toldLines) {
                toldLines = true;
                bench.unwatched().forEach(this::say);
            }
            begun = true;
            asked.setLength(0);
            asked.append(prompt);
            out.println(prompt);
            if (course.step().kind() == Step.Kind.DONE) {
                over = finish.test(null);
            }
            out.flush();
        }
    }

    private void typed(String line) {
        boolean atEnd = course.step().kind() == Step.Kind.DONE;
        if (line.strip().equalsIgnoreCase("quit")) {
            end("");
        } else if (atEnd && !line.strip().matches("(?i)back|undo|help")) {
            over = finish.test(line.strip());
        } else if (!line.isBlank() || !bench.act(course)) {
            course.answer(line);
            if (line.strip().equalsIgnoreCase("back") || line.strip().equalsIgnoreCase("undo")) {
                asked.setLength(0);
            }
        }
        out.flush();
    }

    private void end(String why) {
        say((why.isEmpty() ? "" : why + " ") + "Nothing was written, and nothing of what was found is kept.");
        List<String> found = course.soFar();
        if (!found.isEmpty()) {
            found.forEach(this::say);
            say("The same command begins anew; finding a sensor again takes a second.");
        }
        over = true;
    }
}
