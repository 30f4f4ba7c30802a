package org.cupbeam.studio.ingest;

/**
 * How the ingest is, for whoever operates the host; counts are since its start.
 *
 * @param reachesBroker whether it is connected
 * @param keeps         whether this host keeps the events, and not another
 * @param trouble       why nothing can be kept at present, in words; null while all is well
 * @param waiting       messages that wait to be kept
 * @param kept          events that were kept here, those that came again among them
 * @param missing       numbers that lanes could no longer send
 * @param refused       messages that made no sense
 * @param letGo         messages that found no room, to be sent again by their lanes
 * @param commits       how many commits took up to each of {@link #COMMIT_S}, and longer: not cumulated
 * @param commitS       how long all commits took together, s
 */
public record Vitals(boolean reachesBroker, boolean keeps, String trouble, int waiting, long kept, long missing, long refused,
                     long letGo, long[] commits, double commitS) {
    /** Limits by which commits are sorted, s. */
    static final double[] COMMIT_S = {0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10};

    /** Limits by which commits are sorted, s; what took longer than the last one comes after it. */
    public static double[] limitsS() {
        return COMMIT_S.clone();
    }
}
