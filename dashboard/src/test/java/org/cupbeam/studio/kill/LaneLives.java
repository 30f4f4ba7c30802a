package org.cupbeam.studio.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.track.Attempt;

/**
 * An evening that stops while the lane is dead, and goes on when it is back from the next moment at which nothing moved:
 * what a lane that dies so often must have written down, told by the tracker alone.
 */
final class LaneLives {
    /** A putt that was resolved longer ago than this is on the disk, on however busy a machine. */
    private static final long WRITTEN_WITHIN_NS = 2_000_000_000L;

    private final RecordedEvening evening;
    private final double speed;
    private final List<Attempt> putts = new ArrayList<>();
    private List<Attempt> ahead;
    private long fromNs;
    private int inFlight;

    LaneLives(RecordedEvening evening, double speed) {
        this.evening = evening;
        this.speed = speed;
        ahead = evening.from(0);
    }

    List<String> options() {
        return List.of("--rig", evening.rigFile().toString(), "--trace", evening.trace().toString(), "--from",
                String.format(Locale.ROOT, "%.9f", fromNs / 1e9), "--speed", Double.toString(speed));
    }

    /** All putts that are to be in the journal by now. */
    List<Attempt> putts() {
        return putts;
    }

    /** Balls that rolled beside one that was written down, as the lane was killed: nobody saw what became of them. */
    int inFlight() {
        return inFlight;
    }

    /** Putts that this life can still bring. */
    int ahead() {
        return ahead.size();
    }

    /**
     * A life has ended.
     *
     * @param journal what it left
     * @param livedNs for how long it was seen to live, ns of the machine's clock
     */
    void ended(List<byte[]> journal, long livedNs) throws Exception {
        List<Data.Attempt> written = new ArrayList<>();
        for (byte[] each : journal) {
            Event event = EventJson.decode(each);
            if (event.data() instanceof Data.Attempt attempt) {
                written.add(attempt);
            }
        }
        int before = putts.size();
        int more = written.size() - before;
        assertThat(more).as("putts that this life has added to %d", before).isBetween(0, ahead.size());
        for (int i = 0; i < more; i++) {
            assertThat(written.get(before + i).stamp().monotonicNs()).as("time of putt %d", before + i + 1)
                    .isEqualTo(ahead.get(i).timeNs());
        }
        long surelyNs = fromNs + Math.round((livedNs - WRITTEN_WITHIN_NS) * speed);
        assertThat(ahead.stream().filter(each -> each.resolvedNs() < surelyNs).count())
                .as("putts resolved well before the kill, which must be written").isLessThanOrEqualTo(more);
        putts.addAll(ahead.subList(0, more));
        if (more > 0) {
            long nextNs = evening.quietAfter(ahead.get(more - 1).resolvedNs());
            inFlight += (int) ahead.subList(more, ahead.size()).stream().filter(each -> each.timeNs() < nextNs).count();
            fromNs = nextNs;
            ahead = evening.from(fromNs);
        }
    }
}
