package org.cupbeam.studio.store;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.zip.CRC32C;

/** By which an event's text is told from one of which a bit was flipped on the disk: CRC-32C (RFC 3720, 12.1). */
public final class CheckSum {
    private CheckSum() {
    }

    /** @return 8 hex digits, of the text's UTF-8 bytes */
    public static String of(String text) {
        CRC32C sum = new CRC32C();
        sum.update(text.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().toHexDigits((int) sum.getValue());
    }
}
