package org.cupbeam.link;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.Outbox;

/** An outbox of so many events, whose payloads are their numbers. */
final class FakeOutbox implements Outbox {
    long last;
    long stored;
    long forgotten;
    long connections;
    /** Of the journal {@link #BEFORE}. */
    final List<Row> leftBehind = new ArrayList<>();
    static final String BEFORE = "5e11a4";
    JournalException failure;

    static byte[] payload(long sequence) {
        return Long.toString(sequence).getBytes(StandardCharsets.US_ASCII);
    }

    @Override
    public String id() {
        return "7f3c9a";
    }

    @Override
    public long last() {
        return last;
    }

    @Override
    public long stored() {
        return stored;
    }

    @Override
    public boolean stored(long sequence) {
        if (sequence > last) {
            return false;
        }
        stored = sequence;
        return true;
    }

    @Override
    public List<Row> after(long sequence, int max) throws JournalException {
        failIfAsked();
        long from = Math.max(sequence, forgotten);
        return LongStream.rangeClosed(from + 1, Math.min(last, from + max))
                .mapToObj(each -> new Row(each, payload(each))).toList();
    }

    @Override
    public long nextConnection() throws JournalException {
        failIfAsked();
        return ++connections;
    }

    private void failIfAsked() throws JournalException {
        if (failure != null) {
            throw failure;
        }
    }

    @Override
    public long left() {
        return leftBehind.size();
    }

    @Override
    public List<Row> leftBehind(int max) {
        return leftBehind.subList(0, Math.min(max, leftBehind.size()));
    }

    @Override
    public void storedOf(String journal, long sequence) {
        leftBehind.removeIf(each -> journal.equals(BEFORE) && each.sequence() <= sequence);
    }
}
