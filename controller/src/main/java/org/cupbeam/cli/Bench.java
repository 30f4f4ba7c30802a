package org.cupbeam.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.BlockingQueue;
import org.cupbeam.commission.Course;
import org.cupbeam.commission.Step;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.edge.board.BoardEdges;
import org.cupbeam.edge.board.BoardException;
import org.cupbeam.edge.practice.PracticeBench;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Channel.Level;
import org.cupbeam.rig.Channel.Pull;
import org.cupbeam.rig.Rig;

/** The lines that a course watches, and the hands at its sensors: this board's and somebody's, or simulated ones. */
interface Bench extends AutoCloseable {
    /** Begins to hand the lines' levels to a course, on the thread that runs the queue. */
    void start(Course course, BlockingQueue<Runnable> queue);

    /** Does what a step asks for; nothing where somebody does it with hands of their own. @return whether it did */
    boolean act(Course course);

    /** Which lines cannot be watched, and why. */
    default List<String> unwatched() {
        return List.of();
    }

    @Override
    void close();

    /** A simulated lane; its hands do at Enter what is asked. */
    static Bench practice(long seed, PracticeLane lane, List<Integer> gpios) {
        return new Bench() {
            private PracticeBench bench;
            private int rolls;

            @Override
            public void start(Course course, BlockingQueue<Runnable> queue) {
                bench = new PracticeBench(seed, lane, gpios, course);
                bench.start();
            }

            @Override
            public boolean act(Course course) {
                Step step = course.step();
                switch (step.kind()) {
                    case SETTLE -> bench.rest(3);
                    case FIND -> {
                        bench.touch(step.sensor().name());
                        if (course.step().equals(step)) {
                            bench.rest(31);
                        }
                    }
                    case QUIET -> bench.rest(61);
                    case ROLL -> bench.roll(rolls++ % 2 == 0);
                    case HEIGHT, PLACE, LIMIT, UPHILL, GREEN, DONE -> {
                        return false;
                    }
                }
                return true;
            }

            @Override
            public void close() {
            }
        };
    }

    /** This board's pins. @param pulls each line's resistor */
    static Bench board(List<Integer> gpios, List<Pull> pulls) throws IOException {
        List<Channel> channels = new ArrayList<>();
        for (int i = 0; i < gpios.size(); i++) {
            channels.add(new Channel("gpio-" + gpios.get(i), Kind.BEAM, gpios.get(i), Level.HIGH, pulls.get(i)));
        }
        EdgeSource source;
        try {
            source = BoardEdges.open(new Rig(10, 0, 0, 914.4, channels, List.<Beam>of(), OptionalInt.empty()));
        } catch (BoardException noBoard) {
            throw new IOException(noBoard.getMessage() + "; for a simulated lane add --practice", noBoard);
        }
        return new Bench() {
            @Override
            public void start(Course course, BlockingQueue<Runnable> queue) {
                source.start(new EdgeSink() {
                    @Override
                    public void edge(int line, boolean high, long timeNs) {
                        queue.offer(() -> course.edge(line, high, timeNs));
                    }

                    @Override
                    public void settled(long timeNs) {
                        queue.offer(() -> course.settled(timeNs));
                    }
                });
            }

            @Override
            public boolean act(Course course) {
                return false;
            }

            @Override
            public List<String> unwatched() {
                return source.health().stream().filter(each -> !each.fault().isEmpty())
                        .map(each -> each.channel() + " cannot be watched: " + each.fault()).toList();
            }

            @Override
            public void close() {
                source.close();
            }
        };
    }
}
