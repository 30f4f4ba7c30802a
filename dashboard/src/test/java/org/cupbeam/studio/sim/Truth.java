package org.cupbeam.studio.sim;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Move;
import org.cupbeam.drill.Play;
import org.cupbeam.drill.Putt;
import org.cupbeam.drill.Step;

/**
 * What truly happened at a lane, and what the drill engine makes of that: from the deeds alone, with nothing of the
 * lane's, the journal's or the host's.
 */
final class Truth {
    /**
     * An attempt.
     *
     * @param deed   as done
     * @param putted its place in the play; null outside any
     * @param counts no longer once taken back or voided
     */
    record Made(Deed deed, Putted putted, boolean counts) {
        boolean holed() {
            return deed instanceof Deed.Hole;
        }

        double finishMm() {
            return deed instanceof Deed.Entered entered ? entered.finishMm() : Double.NaN;
        }

        boolean overshot() {
            return putted == null ? deed instanceof Deed.Entered && finishMm() > Green.LIMIT_MM : putted.overshot();
        }

        private Made notCounting() {
            return new Made(deed, putted, false);
        }
    }

    private final List<Deed> deeds = new ArrayList<>();
    private final List<Made> attempts = new ArrayList<>();
    private final List<Integer> canGoBack = new ArrayList<>();
    private Play play;
    private int takenBack;

    void add(Deed deed) {
        deeds.add(deed);
        if (deed instanceof Deed.Start start) {
            play = Play.begin(start.drill(), start.players(), Green.LIMIT_MM);
            canGoBack.clear();
        } else if (deed instanceof Deed.TakeBack || deed instanceof Deed.TakeBackAsked) {
            takeBack();
        } else if (deed instanceof Deed.Void one) {
            attempts.set(one.attempt(), attempts.get(one.attempt()).notCounting());
        } else if (deed instanceof Deed.Pass) {
            play = new Move.Pass().on(play).play();
        } else if (deed instanceof Deed.End) {
            play = new Move.End().on(play).play();
        } else {
            attempt(deed);
        }
    }

    private void attempt(Deed deed) {
        double finishMm = deed instanceof Deed.Entered entered ? entered.finishMm() : Double.NaN;
        Putted putted = null;
        if (play == null) {
            canGoBack.clear(); // outside a play the last one alone can be taken back
        } else {
            Step step = play.after(Putt.of(deed instanceof Deed.Hole, finishMm, Double.NaN));
            play = step.play();
            putted = (Putted) step.happenings().get(0);
        }
        canGoBack.add(attempts.size());
        attempts.add(new Made(deed, putted, true));
    }

    private void takeBack() {
        int last = canGoBack.remove(canGoBack.size() - 1);
        attempts.set(last, attempts.get(last).notCounting());
        play = play == null ? null : play.takeBack().play();
        takenBack++;
    }

    boolean canTakeBack() {
        return !canGoBack.isEmpty();
    }

    /** Null where nothing was ever played. */
    Play play() {
        return play;
    }

    List<Made> attempts() {
        return List.copyOf(attempts);
    }

    /** The attempt that is shown as the last; null where there is none. */
    Made last() {
        return canGoBack.isEmpty() ? null : attempts.get(canGoBack.get(canGoBack.size() - 1));
    }

    int deeds() {
        return deeds.size();
    }

    /**
     * What of this is true where a lane that lost its power has written down so much: a deed that was not on the disk, and
     * so was never told, has not happened. Only deeds at the lane can be in doubt.
     *
     * @param certain how many deeds were told of
     */
    Truth asWritten(int certain, int writtenAttempts, int writtenTakenBack) {
        for (int count = certain; count <= deeds.size(); count++) {
            Truth then = new Truth();
            deeds.subList(0, count).forEach(then::add);
            if (then.attempts.size() == writtenAttempts && then.takenBack == writtenTakenBack) {
                return then;
            }
        }
        throw new AssertionError("the journal holds " + writtenAttempts + " attempts, " + writtenTakenBack
                + " of them taken back; but of " + deeds + " at least " + certain + " were told of");
    }
}
