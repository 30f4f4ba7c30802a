package org.cupbeam.commission;

import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.cupbeam.commission.ArrayEstimate.Value;
import org.cupbeam.track.RolledBall;

/** The step in which balls are rolled: what each ball adds is told as it comes. */
final class Rolling implements Watch {
    static final int BALLS_EACH_WAY = 3;

    private final Findings findings;
    private final List<Found> beams;
    private final Consumer<String> say;
    private final BallWatch balls;

    Rolling(Findings findings, Consumer<String> say) {
        this.findings = findings;
        this.say = say;
        beams = findings.beams();
        balls = new BallWatch(findings.beamNames(), this::rolled, say);
    }

    @Override
    public void edge(int line, boolean high, long timeNs) {
        for (int i = 0; i < beams.size(); i++) {
            if (beams.get(i).line() == line) {
                balls.edge(i, beams.get(i).isActive(high), timeNs);
            }
        }
    }

    @Override
    public void settled(long timeNs) {
        balls.settled(timeNs);
    }

    private void rolled(RolledBall ball) {
        findings.balls().add(ball);
        say.accept("ball " + findings.balls().size() + (ball.toward() ? ", as putts go" : ", back") + ": " + soFar());
    }

    /**
     * The balls are enough: the beams get their names in the order in which balls came.
     *
     * @throws IllegalArgumentException in words, where they are not
     */
    void finish() {
        if (lacking() != null) {
            throw new IllegalArgumentException("not yet: " + lacking());
        }
        if (findings.nameInOrder(balls.order())) {
            say.accept("The balls came to the beams in another order than they were blocked in; they have changed names: along the line "
                    + String.join(", ", findings.beamNames()) + " are now GPIO " + findings.beamGpios());
        }
    }

    boolean undo() {
        if (findings.balls().isEmpty()) {
            return false;
        }
        findings.balls().remove(findings.balls().size() - 1);
        if (findings.balls().isEmpty()) {
            balls.forgetOrder();
        }
        return true;
    }

    /** What the balls say by now. */
    String soFar() {
        if (findings.balls().isEmpty()) {
            return "no ball yet";
        }
        ArrayEstimate is = findings.spacings();
        StringBuilder words = new StringBuilder("from ").append(beams.get(balls.order().get(0)).sensor().name());
        List<Integer> order = balls.order();
        double first = is.placesMm().get(order.get(0));
        for (int i = 1; i < order.size(); i++) {
            words.append(String.format(Locale.ROOT, "%s %s %.1f mm", i == 1 ? "" : ",", beams.get(order.get(i)).sensor().name(),
                    is.placesMm().get(order.get(i)) - first));
            words.append(within(is.spacingSdsMm().get(order.get(i))));
        }
        if (is.credible()) {
            Value green = is.stimpFt(0);
            words.append(String.format(Locale.ROOT, "; green %.2f ft ±%.2f%s", green.is(), green.within(), is.bothWays() ? ""
                    : " if the line is level"));
        }
        return words.toString();
    }

    private static String within(double sdMm) {
        return sdMm > 0 ? String.format(Locale.ROOT, " ±%.1f", Within.of(sdMm)) : "";
    }

    /** What is still to do before the balls are enough; null where they are. */
    private String lacking() {
        long toward = findings.balls().stream().filter(RolledBall::toward).count();
        long back = findings.balls().size() - toward;
        return toward >= BALLS_EACH_WAY && back >= BALLS_EACH_WAY || toward >= 2 * BALLS_EACH_WAY ? null
                : BALLS_EACH_WAY + " balls each way would do (or " + 2 * BALLS_EACH_WAY + " as putts go, where the slope is known); there are "
                + toward + " as putts go and " + back + " back";
    }
}
