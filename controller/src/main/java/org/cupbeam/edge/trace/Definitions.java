package org.cupbeam.edge.trace;

import org.cupbeam.rig.Rig;
import org.cupbeam.rig.file.Shown;

/** The head of a trace, taken word by word: its unit of time, and its signals. */
final class Definitions {
    /** Begins a line of its own that sigrok-cli 0.7.2 writes before the dump. */
    private static final String SIGROK_PREAMBLE = "META";
    private static final int TIMESCALE_CHARS_MAX = 16;

    private enum In { NOTHING, PREAMBLE, PROSE, SCOPE, TIMESCALE, SIGNAL, LAST }

    private final Signals signals;
    private final StringBuilder timescaleText = new StringBuilder();
    private Timescale timescale;
    private In in = In.NOTHING;
    private boolean complete;

    Definitions(Rig rig) {
        signals = new Signals(rig);
    }

    boolean complete() {
        return complete;
    }

    IdCodes codes() {
        return signals.codes();
    }

    Timescale timescale() {
        return timescale;
    }

    void take(Tokens word) throws TraceException {
        switch (in) {
            case NOTHING -> begin(word);
            case PREAMBLE -> {
                if (word.bytes[word.from] == '$') {
                    begin(word);
                }
            }
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
                } else if (timescaleText.length() < TIMESCALE_CHARS_MAX) {
                    timescaleText.append(word.text());
                }
            }
            case SIGNAL -> {
                if (ends(word, "$var")) {
                    signals.declare(word);
                    in = In.NOTHING;
                } else {
                    signals.take(word);
                }
            }
            case LAST -> finish(word);
        }
    }

    private void begin(Tokens word) throws TraceException {
        byte first = word.bytes[word.from];
        if (word.is(SIGROK_PREAMBLE) && word.line() == 1) {
            in = In.PREAMBLE;
            return;
        }
        if (first != '$') {
            throw word.wrong(word.isText() ? '"' + word.shown(word.from)
                    + "\" comes before $enddefinitions, where only $keywords may; is it a Value Change Dump?"
                    : word.notText());
        }
        if (word.text().startsWith("$dump")) {
            throw word.wrong(word.shown(word.from) + " comes before $enddefinitions; values belong after it");
        }
        in = word.is("$var") ? In.SIGNAL
                : word.is("$timescale") ? In.TIMESCALE
                : word.is("$enddefinitions") ? In.LAST
                : word.is("$scope") || word.is("$upscope") ? In.SCOPE
                : In.PROSE;
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
            throw word.wrong('"' + Shown.of(timescaleText.toString(), 4 * TIMESCALE_CHARS_MAX)
                    + "\" is no unit of time; 1, 10 or 100 of s, ms, us, ns, ps or fs would do");
        }
        if (timescale != null && !timescale.equals(read)) {
            throw word.wrong("a second $timescale, unlike the first");
        }
        timescale = read;
        timescaleText.setLength(0);
        in = In.NOTHING;
    }

    private void finish(Tokens word) throws TraceException {
        if (!word.is("$end")) {
            throw word.wrong("$enddefinitions without its $end");
        }
        if (timescale == null) {
            throw word.wrong("no $timescale, so that its times have no unit; $timescale 1 us $end would do, if it is so");
        }
        String missing = signals.missing();
        if (missing != null) {
            throw word.wrong(missing);
        }
        complete = true;
    }
}
