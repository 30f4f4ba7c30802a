package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.cupbeam.track.RolledBall;
import org.cupbeam.track.RolledBall.Crossing;

/**
 * Balls rolled one at a time through all beams, of which no place is known. The first shows the beams' order along the line,
 * since it is rolled as putts go (or back, where it comes in just the reverse of what is wanted, of three beams or more); the
 * others have that order or its reverse. What does not is told in words, and is no ball.
 */
final class BallWatch {
    /** After so long without a beam the ball has stopped. */
    static final long STOPPED_NS = 5_000_000_000L;
    /** A ball slows: its time in a beam may not shrink more than heights and lags explain. */
    private static final double GAIN_MAX = 1.10;

    private final List<String> names;
    private final List<Receiver> receivers = new ArrayList<>();
    private final Consumer<RolledBall> ball;
    private final Consumer<String> trouble;
    private final List<Crossing> current = new ArrayList<>();
    /** The beams as a putt meets them; null until the first ball. */
    private List<Integer> order;

    /**
     * @param names   the beams', as wanted
     * @param ball    takes each ball; its crossings have the beams' numbers in the order of names
     * @param trouble takes words
     */
    BallWatch(List<String> names, Consumer<RolledBall> ball, Consumer<String> trouble) {
        this.names = names;
        this.ball = ball;
        this.trouble = trouble;
        for (int i = 0; i < names.size(); i++) {
            int beam = i;
            receivers.add(new Receiver(false, each -> current.add(new Crossing(beam, each.onNs(), each.offNs()))));
        }
    }

    void edge(int beam, boolean blocked, long timeNs) {
        settled(timeNs);
        receivers.get(beam).edge(blocked, timeNs);
    }

    void settled(long timeNs) {
        receivers.forEach(each -> each.settle(timeNs));
        if (current.isEmpty()) {
            return;
        }
        long lastNs = current.stream().mapToLong(Crossing::offNs).max().orElseThrow();
        if (current.size() >= names.size() && timeNs - lastNs > 4 * Receiver.BURST_NS || timeNs - lastNs > STOPPED_NS) {
            List<Crossing> seen = new ArrayList<>(current);
            current.clear();
            seen.sort(Comparator.comparingLong(Crossing::onNs));
            judge(seen);
        }
    }

    private void judge(List<Crossing> seen) {
        List<Integer> beams = seen.stream().map(Crossing::beam).toList();
        String wrong = wrong(seen, beams);
        if (wrong != null) {
            trouble.accept("no ball: " + wrong);
            return;
        }
        if (order == null) {
            List<Integer> wanted = IntStream.range(0, names.size()).boxed().toList();
            order = names.size() > 2 && beams.equals(reversed(wanted)) ? wanted : beams;
        }
        ball.accept(new RolledBall(beams.equals(order), seen));
    }

    private String wrong(List<Crossing> seen, List<Integer> beams) {
        List<Integer> missing = IntStream.range(0, names.size()).filter(each -> !beams.contains(each)).boxed().toList();
        if (beams.stream().distinct().count() < beams.size()) {
            return "a beam was blocked twice; roll one ball at a time, and keep feet out of the beams";
        }
        if (!missing.isEmpty()) {
            return called(missing) + " did not see it: it stopped before, rolled beside the beams' end, or "
                    + called(missing) + " stands too high or is misaligned";
        }
        for (int i = 1; i < seen.size(); i++) {
            if (width(seen.get(i)) * GAIN_MAX < width(seen.get(i - 1))) {
                return "it was faster at " + names.get(beams.get(i)) + " than at " + names.get(beams.get(i - 1))
                        + ", as no free ball is; let it go before the first beam";
            }
        }
        if (order != null && !beams.equals(order) && !beams.equals(reversed(order))) {
            return "it came in the order " + called(beams) + ", the first ball in the order " + called(order)
                    + "; if the first one was wrong, undo all balls and begin again";
        }
        return null;
    }

    private static double width(Crossing crossing) {
        return crossing.offNs() - crossing.onNs();
    }

    private static List<Integer> reversed(List<Integer> order) {
        List<Integer> reversed = new ArrayList<>(order);
        Collections.reverse(reversed);
        return reversed;
    }

    private String called(List<Integer> beams) {
        return beams.stream().map(names::get).collect(Collectors.joining(", "));
    }

    /** The beams as a putt meets them, as the first ball had it; null before that. */
    List<Integer> order() {
        return order;
    }

    /** The next ball shows the order anew. */
    void forgetOrder() {
        order = null;
    }
}
