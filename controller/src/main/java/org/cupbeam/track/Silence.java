package org.cupbeam.track;

/**
 * Tells a strike or cup sensor that says nothing from one that has nothing to say, by the putts that come without a word of
 * it. Beams watch each other instead: see {@link Pairs}.
 */
final class Silence implements TrackSink {
    /** So many putts that the strike sensor did not feel, one after another, are no accident. */
    private static final int UNFELT = 5;
    /** So many balls that came to the hole and went no further, of which the cup says nothing, are in it. */
    private static final int VANISHED = 3;
    /** Whoever holes one in six misses so many in a row once in a hundred times: worth a try of the sensor, no more. */
    private static final int DRY = 25;

    private final TrackSink sink;
    private int unfelt;
    private int vanished;
    private int missed;

    Silence(TrackSink sink) {
        this.sink = sink;
    }

    /** The strike sensor said something. */
    void struck() {
        unfelt = 0;
    }

    /** The cup's sensor said something. */
    void cup() {
        vanished = 0;
        missed = 0;
    }

    @Override
    public void attempt(Attempt attempt) {
        unfelt++;
        missed += attempt.holed() ? 0 : 1;
        sink.attempt(attempt);
    }

    @Override
    public void untold(long timeNs) {
        sink.untold(timeNs);
    }

    @Override
    public void gesture(Gesture gesture, long timeNs) {
        sink.gesture(gesture, timeNs);
    }

    /** A ball came to the hole that should have been seen behind it, and was not: whether to ask the cup why, not the rim. */
    boolean vanished() {
        return ++vanished >= VANISHED;
    }

    Doubt ofStrikes() {
        return unfelt >= UNFELT ? Doubt.SILENT : Doubt.NONE;
    }

    Doubt ofCup() {
        if (vanished >= VANISHED) {
            return Doubt.SILENT;
        }
        return missed >= DRY ? Doubt.DRY : Doubt.NONE;
    }
}
