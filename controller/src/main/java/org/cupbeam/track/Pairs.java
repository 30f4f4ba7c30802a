package org.cupbeam.track;

import org.cupbeam.track.PairGauge.Pass;

/** The beams that stand in pairs, and what each two of them say of each other. */
final class Pairs {
    private final Lay lay;
    /** Of each beam that is the first of two; null where it is not. */
    private final PairTrust[] first;

    Pairs(Lay lay) {
        this.lay = lay;
        first = new PairTrust[lay.beams];
        for (int i = 0; i < lay.beams; i++) {
            if (lay.fellow(i) > i) {
                first[i] = new PairTrust(new PairGauge(lay.positionMm[i + 1] - lay.positionMm[i], 2 * lay.halfChordMm[i],
                        2 * lay.halfChordMm[i + 1]), lay.isBeforeHole(i));
            }
        }
    }

    /**
     * Takes a pulse of a beam, and tells how it passed its pair with it.
     *
     * @param otherSees the other beam of its pair could have seen it too
     */
    Pass pulse(int beam, long onNs, long offNs, boolean otherSees) {
        PairTrust pair = of(beam);
        return pair == null ? Pass.NONE : pair.pulse(first[beam] == pair ? 0 : 1, onNs, offNs, otherSees);
    }

    /** Whether what passed a beam's pair last may be no putt, however much it looks like one. */
    boolean isUnsure(int beam) {
        PairTrust pair = of(beam);
        return pair != null && pair.isUnsure();
    }

    /** What is wrong with a beam by its pair. */
    Doubt doubt(int beam) {
        PairTrust pair = of(beam);
        return pair == null ? Doubt.NONE : pair.doubt(first[beam] == pair ? 0 : 1);
    }

    double insteadMm(int beam) {
        return of(beam).insteadMm();
    }

    double apartMm(int beam) {
        return of(beam).apartMm();
    }

    private PairTrust of(int beam) {
        int fellow = lay.fellow(beam);
        return fellow < 0 ? null : first[Math.min(beam, fellow)];
    }
}
