package org.cupbeam.edge.trace;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.file.Shown;

/** The signals that a trace declares, and which of them are the rig's wires. */
final class Signals {
    private static final int NAMES_SHOWN_MAX = 20;
    private static final int SHOWN_MAX = 40;
    private static final Set<String> NOT_A_BIT = Set.of("real", "realtime", "string", "event");

    private final IdCodes codes = new IdCodes();
    private final List<Channel> channels;
    private final long[] lineDeclared;
    private final byte[][] codeDeclared;
    private final Set<String> names = new LinkedHashSet<>();

    private int part;
    private String type;
    private String size;
    private byte[] code;
    private String name;

    Signals(Rig rig) {
        channels = rig.channels();
        lineDeclared = new long[channels.size()];
        codeDeclared = new byte[channels.size()][];
    }

    IdCodes codes() {
        return codes;
    }

    /** Takes the next word of a declaration. */
    void take(Tokens word) {
        switch (part++) {
            case 0 -> type = word.text();
            case 1 -> size = word.text();
            case 2 -> code = Arrays.copyOfRange(word.bytes, word.from, word.to);
            case 3 -> name = word.text();
            default -> { } // which bit, or bits, of a vector
        }
    }

    /** Takes the declaration's end. */
    void declare(Tokens word) throws TraceException {
        if (part < 4) {
            throw word.wrong("$var lacks a part; type, size, code and name would do, as in $var wire 1 ! cup $end");
        }
        part = 0;
        // A name that no identifier of Verilog's may have is written with a backslash before it.
        String plain = name.startsWith("\\") ? name.substring(1) : name;
        int channel = channelNamed(plain);
        if (channel >= 0) {
            declareChannel(word, channel);
        }
        if (names.size() < NAMES_SHOWN_MAX) {
            names.add(Shown.of(plain, SHOWN_MAX));
        }
        boolean fresh = codes.get(code, 0, code.length) < 0;
        if (fresh && !codes.put(code, 0, code.length, channel)) {
            throw word.wrong("\"" + Shown.of(new String(code, StandardCharsets.ISO_8859_1), SHOWN_MAX) + "\" is one identifier code too many, or"
                    + " longer than " + IdCodes.CODE_BYTES_MAX + "; up to " + IdCodes.CODES_MAX + " signals would do");
        }
    }

    /** Which wires of the rig the trace lacks, said as an error's reason; null where it has them all. */
    String missing() {
        List<String> missing = channels.stream().map(Channel::name)
                .filter(each -> codeDeclared[channelNamed(each)] == null).toList();
        if (missing.isEmpty()) {
            return null;
        }
        return "the rig's " + String.join(", ", missing) + " is not in the trace, which has "
                + (names.isEmpty() ? "no signal" : String.join(", ", names))
                + (names.size() == NAMES_SHOWN_MAX ? ", …" : "") + "; is it of this rig?";
    }

    private void declareChannel(Tokens word, int channel) throws TraceException {
        String wire = channels.get(channel).name();
        if (!size.equals("1") || NOT_A_BIT.contains(type)) {
            throw word.wrong(wire + " is a " + Shown.of(type, SHOWN_MAX) + " of size " + Shown.of(size, SHOWN_MAX) + "; a sensor's wire has size 1");
        }
        int other = codes.get(code, 0, code.length);
        if (other >= 0 && other != channel) {
            throw word.wrong(wire + " has the code of " + channels.get(other).name() + "; each wire needs its own");
        }
        if (codeDeclared[channel] != null && !Arrays.equals(codeDeclared[channel], code)) {
            throw word.wrong(wire + " is declared in line " + lineDeclared[channel]
                    + " too, as another signal; one of the two would do");
        }
        codeDeclared[channel] = code;
        lineDeclared[channel] = word.line();
    }

    private int channelNamed(String wanted) {
        for (int i = 0; i < channels.size(); i++) {
            if (channels.get(i).name().equals(wanted)) {
                return i;
            }
        }
        return IdCodes.IGNORED;
    }
}
