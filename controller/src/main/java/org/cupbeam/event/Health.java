package org.cupbeam.event;

import java.time.Instant;
import java.util.List;
import org.cupbeam.drill.Worded;

/**
 * How a lane is.
 *
 * @param connection the number of the connection that says so: a {@code lost} of an earlier one than the latest
 *                   {@code online} is late, and to be passed over
 * @param boot       as in {@link Stamp}; connections are numbered within a journal, not within a boot
 * @param report     the particulars; null in a last will
 */
public record Health(State state, long connection, String boot, Report report) {

    /** Online; gone in good order; or found gone by the broker. */
    public enum State implements Worded { ONLINE, OFFLINE, LOST }

    /**
     * The particulars.
     *
     * @param journal      the journal's id
     * @param version      the program's
     * @param clock        whether the wall clock can be believed
     * @param outbox       events that the host has not said it stored
     * @param edgesDropped edges that found their queue full, since the start
     * @param faults       whatever needs somebody, in words; empty when well
     * @param rolls        a test of the green that goes on; null where none does
     * @param unknown      what it can no longer know for want of sensors, in words; empty when it has all
     */
    public record Report(String journal, String version, Instant time, Stamp.Clock clock, long outbox,
                         long edgesDropped, List<Sensor> sensors, List<String> faults, Rolls rolls, List<String> unknown) {
        public Report {
            sensors = List.copyOf(sensors);
            faults = List.copyOf(faults);
            unknown = List.copyOf(unknown);
        }

        /** Of a lane that can know all that its rig lets it know. */
        public Report(String journal, String version, Instant time, Stamp.Clock clock, long outbox, long edgesDropped,
                      List<Sensor> sensors, List<String> faults, Rolls rolls) {
            this(journal, version, time, clock, outbox, edgesDropped, sensors, faults, rolls, List.of());
        }

        /** Of a lane that is not being tested. */
        public Report(String journal, String version, Instant time, Stamp.Clock clock, long outbox, long edgesDropped,
                      List<Sensor> sensors, List<String> faults) {
            this(journal, version, time, clock, outbox, edgesDropped, sensors, faults, null);
        }
    }

    /**
     * One sensor.
     *
     * @param lastEdgeAgoS s since its last edge; NaN where it never had one
     */
    public record Sensor(String name, Kind kind, Condition state, double lastEdgeAgoS, double edgesPerMinute) {
        /** What it is. */
        public enum Kind implements Worded { CUP, STRIKE, PEDAL, BEAM }

        /** How it is; unseen: no edge yet. */
        public enum Condition implements Worded { CLEAR, BLOCKED, STUCK, CHATTERING, UNSEEN }
    }
}
