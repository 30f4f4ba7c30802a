package org.cupbeam.edge.trace;

import java.security.SecureRandom;
import java.util.Arrays;

/** What each identifier code of a trace stands for. Looking one up allocates nothing. */
final class IdCodes {
    /** Not declared in the trace. */
    static final int UNKNOWN = -2;
    /** Declared, but no wire of the rig. */
    static final int IGNORED = -1;
    /** Of those with more than one character. */
    static final int CODES_MAX = 1 << 16;
    static final int CODE_BYTES_MAX = 64;

    /** Differs from start to start, so that no trace can be made whose codes all fall on one place. */
    private static final int SALT = new SecureRandom().nextInt();

    /** Codes of one character, nearly all of them in practice. */
    private final int[] single = new int[128];
    private long[] slots = new long[64];
    private int[] meanings = new int[64];
    private byte[] pool = new byte[256];
    private int poolUsed;
    private int count;

    IdCodes() {
        Arrays.fill(single, UNKNOWN);
    }

    int get(byte[] bytes, int from, int to) {
        if (to - from == 1 && bytes[from] >= 0) {
            return single[bytes[from]];
        }
        int slot = slot(bytes, from, to);
        return slots[slot] == 0 ? UNKNOWN : meanings[slot];
    }

    /** Sets a code's meaning; false where it is too long, or there are too many. */
    boolean put(byte[] bytes, int from, int to, int meaning) {
        if (to - from == 1 && bytes[from] >= 0) {
            single[bytes[from]] = meaning;
            return true;
        }
        if (to - from > CODE_BYTES_MAX || to == from) {
            return false;
        }
        int slot = slot(bytes, from, to);
        if (slots[slot] == 0) {
            if (count == CODES_MAX) {
                return false;
            }
            add(slot, bytes, from, to);
            slot = slot(bytes, from, to);
        }
        meanings[slot] = meaning;
        return true;
    }

    private void add(int slot, byte[] bytes, int from, int to) {
        int length = to - from;
        if (poolUsed + length > pool.length) {
            pool = Arrays.copyOf(pool, pool.length * 2);
        }
        System.arraycopy(bytes, from, pool, poolUsed, length);
        slots[slot] = (long) poolUsed << 32 | length;
        poolUsed += length;
        if (++count * 2 > slots.length) {
            grow();
        }
    }

    private void grow() {
        long[] oldSlots = slots;
        int[] oldMeanings = meanings;
        slots = new long[oldSlots.length * 2];
        meanings = new int[slots.length];
        for (int i = 0; i < oldSlots.length; i++) {
            if (oldSlots[i] != 0) {
                int at = (int) (oldSlots[i] >>> 32);
                int slot = slot(pool, at, at + (int) oldSlots[i]);
                slots[slot] = oldSlots[i];
                meanings[slot] = oldMeanings[i];
            }
        }
    }

    /** Where this code is, or would go. Open addressing, never more than half full. */
    private int slot(byte[] bytes, int from, int to) {
        int hash = SALT;
        for (int i = from; i < to; i++) {
            hash = (hash ^ bytes[i]) * 0x9E3779B1;
            hash ^= hash >>> 15;
        }
        int slot = hash & slots.length - 1;
        while (slots[slot] != 0 && !same(slots[slot], bytes, from, to)) {
            slot = slot + 1 & slots.length - 1;
        }
        return slot;
    }

    private boolean same(long entry, byte[] bytes, int from, int to) {
        int at = (int) (entry >>> 32);
        return Arrays.equals(pool, at, at + (int) entry, bytes, from, to);
    }
}
