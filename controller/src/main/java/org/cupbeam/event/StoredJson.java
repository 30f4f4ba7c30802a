package org.cupbeam.event;

/** How far the host has stored, as JSON. */
public final class StoredJson {
    private StoredJson() {
    }

    public static byte[] encode(Stored stored) {
        return JsonOut.bytes(to -> to.text("journal", stored.journal()).sequence("sequence", stored.sequence()));
    }

    public static Stored decode(byte[] payload) throws BadMessage {
        Fields from = JsonIn.object(payload);
        return new Stored(from.text("journal", Source::isJournal, "a journal's id"), from.sequence("sequence"));
    }
}
