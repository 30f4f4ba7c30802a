package org.cupbeam.lane;

import java.util.Random;
import org.cupbeam.edge.EdgeSink;

/** Between a simulated green and whoever takes its edges: one sensor that does not say what it should. */
abstract class BrokenSensor implements EdgeSink {
    protected final int channel;
    protected final long fromNs;
    protected final EdgeSink to;

    BrokenSensor(int channel, double fromS, EdgeSink to) {
        this.channel = channel;
        fromNs = Math.round(fromS * 1e9);
        this.to = to;
    }

    /** Nothing is wrong with the others. */
    @Override
    public void edge(int which, boolean active, long timeNs) {
        if (which == channel) {
            own(active, timeNs);
        } else {
            meanwhile(timeNs);
            to.edge(which, active, timeNs);
        }
    }

    @Override
    public void settled(long timeNs) {
        meanwhile(timeNs);
        to.settled(timeNs);
    }

    abstract void own(boolean active, long timeNs);

    void meanwhile(long untilNs) {
    }

    /** Wired the wrong way round: on at rest. */
    static BrokenSensor reversed(int channel, EdgeSink to) {
        to.edge(channel, true, 1_000_000);
        return new BrokenSensor(channel, 0, to) {
            @Override
            void own(boolean active, long timeNs) {
                to.edge(channel, !active, timeNs);
            }
        };
    }

    /** At one level from a time to another, whatever is in it. */
    static BrokenSensor held(int channel, boolean level, double fromS, double toS, EdgeSink to) {
        return new BrokenSensor(channel, fromS, to) {
            private final long endNs = toS < Double.POSITIVE_INFINITY ? Math.round(toS * 1e9) : Long.MAX_VALUE;
            private boolean on;
            private boolean own;

            @Override
            void own(boolean active, long timeNs) {
                meanwhile(timeNs);
                own = active;
                if (timeNs < fromNs || timeNs >= endNs) {
                    say(active, timeNs);
                }
            }

            @Override
            void meanwhile(long untilNs) {
                if (untilNs >= endNs) {
                    say(own, endNs);
                } else if (untilNs >= fromNs) {
                    say(level, fromNs);
                }
            }

            private void say(boolean now, long timeNs) {
                if (now != on) {
                    on = now;
                    to.edge(channel, now, timeNs);
                }
            }
        };
    }

    /** Full with the first ball that comes after a time. */
    static BrokenSensor full(int channel, double fromS, EdgeSink to) {
        return new BrokenSensor(channel, fromS, to) {
            private boolean full;

            @Override
            void own(boolean active, long timeNs) {
                if (!full) {
                    to.edge(channel, active, timeNs);
                    full = active && timeNs >= fromNs;
                }
            }
        };
    }

    /** On and off of itself from a time on, whatever is in it. */
    static BrokenSensor flickering(int channel, double fromS, double forS, double[] onS, double[] offS, Random dice,
                                   EdgeSink to) {
        return new BrokenSensor(channel, fromS, to) {
            private final long endNs = fromNs + Math.round(forS * 1e9);
            private boolean on;
            private boolean own;
            private long nextNs = fromNs;

            @Override
            void own(boolean active, long timeNs) {
                meanwhile(timeNs);
                own = active;
                if (timeNs < fromNs || timeNs >= endNs) {
                    say(active, timeNs);
                }
            }

            @Override
            void meanwhile(long untilNs) {
                while (nextNs <= untilNs && nextNs < endNs) {
                    say(!on, nextNs);
                    double[] range = on ? onS : offS;
                    nextNs += Math.round(1e9 * (range[0] + (range[1] - range[0]) * dice.nextDouble()));
                }
                if (nextNs != Long.MAX_VALUE && nextNs >= endNs && untilNs >= endNs) {
                    nextNs = Long.MAX_VALUE;
                    say(own, endNs);
                }
            }

            private void say(boolean now, long timeNs) {
                if (now != on) {
                    on = now;
                    to.edge(channel, now, timeNs);
                }
            }
        };
    }
}
