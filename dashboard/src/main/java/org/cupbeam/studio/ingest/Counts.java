package org.cupbeam.studio.ingest;

import java.util.concurrent.atomic.AtomicLongArray;
import java.util.concurrent.atomic.LongAdder;

/** What the ingest has done since its start, counted by its threads and read by others. */
final class Counts {
    private static final double NS_PER_S = 1e9;

    private final LongAdder kept = new LongAdder();
    private final LongAdder missing = new LongAdder();
    private final LongAdder refused = new LongAdder();
    private final LongAdder letGo = new LongAdder();
    private final LongAdder commitNs = new LongAdder();
    private final AtomicLongArray commits = new AtomicLongArray(Vitals.COMMIT_S.length + 1);

    /** @param tookNs until the batch was kept for good, tries in vain included */
    void kept(Batch batch, long tookNs) {
        kept.add(batch.arrivals().size());
        refused.add(batch.deadLetters().size());
        batch.missing().forEach(each -> missing.add(each.to() - each.from() + 1));
        commitNs.add(tookNs);
        int place = 0;
        while (place < Vitals.COMMIT_S.length && tookNs / NS_PER_S > Vitals.COMMIT_S[place]) {
            place++;
        }
        commits.incrementAndGet(place);
    }

    void letGo(long events) {
        letGo.add(events);
    }

    Vitals now(boolean reachesBroker, boolean keeps, String trouble, int waiting) {
        long[] bySize = new long[commits.length()];
        for (int i = 0; i < bySize.length; i++) {
            bySize[i] = commits.get(i);
        }
        return new Vitals(reachesBroker, keeps, trouble, waiting, kept.sum(), missing.sum(), refused.sum(), letGo.sum(), bySize,
                commitNs.sum() / NS_PER_S);
    }
}
