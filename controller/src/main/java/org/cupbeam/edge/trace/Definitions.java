package org.cupbeam.edge.trace;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/** The head of a trace, taken word by word: its unit of time, and which identifier code is which wire of the rig. */
final class Definitions {
    private static final int NAMES_SHOWN_MAX = 20;
    private static final Set<String> NOT_A_BIT = Set.of("real", "realtime", "string", "event");

    private enum In { NOTHING, PROSE, SCOPE, TIMESCALE, VARIABLE, LAST }

    private final IdCodes codes = new IdCodes();
    private final List<Channel> channels;
    private final long[] lineDeclared;
    private final byte[][] codeDeclared;
    private final Set<String> names = new LinkedHashSet<>();
    private final StringBuilder timescaleText = new StringBuilder();
    private Timescale timescale;
    private In in = In.NOTHING;
    private boolean complete;

    private int field;
    private String type;
    private String size;
    private byte[] code;
    private String name;

    Definitions(Rig rig) {
        channels = rig.channels();
        lineDeclared = new long[channels.size()];
        codeDeclared = new byte[channels.size()][];
    }

    boolean complete() {
        return complete;
    }

    IdCodes codes() {
        return codes;
    }

    Timescale timescale() {
        return timescale;
    }

    void take(Tokens word) throws TraceException {
        switch (in) {
            case NOTHING -> begin(word);
            case PROSE -> {
                if (word.is("$end")) {
                    in = In.NOTHING;
                }
            }
            case SCOPE -> {
                if (ends(word, "$scope")) {
                    in = In.NOTHING;
                }
            }
            case TIMESCALE -> {
                if (ends(word, "$timescale")) {
                    setTimescale(word);
                } else if (timescaleText.length() < 16) {
                    timescaleText.append(text(word));
                }
            }
            case VARIABLE -> {
                if (ends(word, "$var")) {
                    declare(word);
                } else {
                    field(word);
                }
            }
            case LAST -> {
                if (!word.is("$end")) {
                    throw word.wrong("$enddefinitions without its $end");
                }
                finish(word);
            }
        }
    }

    private void begin(Tokens word) throws TraceException {
        byte first = word.bytes[word.from];
        if (first != '$') {
            throw word.wrong(first < ' ' || first == 127 ? notText(word) : '"' + word.shown(word.from)
                    + "\" comes before $enddefinitions, where only $keywords may; is it a Value Change Dump?");
        }
        field = 0;
        in = word.is("$var") ? In.VARIABLE
                : word.is("$timescale") ? In.TIMESCALE
                : word.is("$enddefinitions") ? In.LAST
                : word.is("$scope") || word.is("$upscope") ? In.SCOPE
                : In.PROSE;
        if (text(word).startsWith("$dump")) {
            throw word.wrong(word.shown(word.from) + " comes before $enddefinitions; values belong after it");
        }
    }

    static String notText(Tokens word) {
        return String.format("byte 0x%02X is no text; is the trace compressed, or no Value Change Dump?",
                word.bytes[word.from] & 0xFF);
    }

    /** Whether this word is the $end; another keyword where it should be says that it was forgotten. */
    private static boolean ends(Tokens word, String keyword) throws TraceException {
        boolean end = word.is("$end");
        if (!end && (word.is("$var") || word.is("$scope") || word.is("$upscope") || word.is("$enddefinitions"))) {
            throw word.wrong("the " + keyword + " before this " + word.shown(word.from) + " lacks its $end");
        }
        return end;
    }

    private void setTimescale(Tokens word) throws TraceException {
        Timescale read = Timescale.of(timescaleText.toString());
        if (read == null) {
            throw word.wrong("\"" + timescaleText + "\" is no unit of time; 1, 10 or 100 of s, ms, us, ns, ps or fs would do");
        }
        if (timescale != null && !timescale.equals(read)) {
            throw word.wrong("a second $timescale, unlike the first");
        }
        timescale = read;
        timescaleText.setLength(0);
        in = In.NOTHING;
    }

    private void field(Tokens word) {
        switch (field++) {
            case 0 -> type = text(word);
            case 1 -> size = text(word);
            case 2 -> code = Arrays.copyOfRange(word.bytes, word.from, word.to);
            case 3 -> name = text(word);
            default -> { } // a bit or a range of bits
        }
    }

    private void declare(Tokens word) throws TraceException {
        if (field < 4) {
            throw word.wrong("$var lacks a part; type, size, code and name would do, as in $var wire 1 ! cup $end");
        }
        String plain = name.startsWith("\\") ? name.substring(1) : name;
        int channel = channelNamed(plain);
        if (channel >= 0) {
            declareChannel(word, channel);
        }
        if (names.size() < NAMES_SHOWN_MAX) {
            names.add(plain);
        }
        boolean fresh = codes.get(code, 0, code.length) < 0;
        if (fresh && !codes.put(code, 0, code.length, channel)) {
            throw word.wrong("an identifier code too long, or more than " + IdCodes.CODES_MAX + " of them");
        }
        in = In.NOTHING;
    }

    private void declareChannel(Tokens word, int channel) throws TraceException {
        String wire = channels.get(channel).name();
        if (!size.equals("1") || NOT_A_BIT.contains(type)) {
            throw word.wrong(wire + " is a " + type + " of size " + size + "; a sensor's wire has size 1");
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

    private void finish(Tokens word) throws TraceException {
        if (timescale == null) {
            throw word.wrong("no $timescale, so that its times have no unit; $timescale 1 us $end would do, if it is so");
        }
        List<String> missing = channels.stream().map(Channel::name)
                .filter(each -> codeDeclared[channelNamed(each)] == null).toList();
        if (!missing.isEmpty()) {
            throw word.wrong("the rig's " + String.join(", ", missing) + " is not in the trace, which has "
                    + (names.isEmpty() ? "no signal" : String.join(", ", names))
                    + (names.size() == NAMES_SHOWN_MAX ? ", …" : "") + "; is it of this rig?");
        }
        complete = true;
    }

    private static String text(Tokens word) {
        return new String(word.bytes, word.from, Math.min(word.length(), 256), StandardCharsets.UTF_8);
    }
}
