package org.cupbeam.lane;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Stations;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Words;
import org.cupbeam.journal.InputCodec;
import org.cupbeam.lane.Told.Begun;
import org.cupbeam.lane.Told.Ended;
import org.cupbeam.lane.Told.Passed;
import org.cupbeam.lane.Told.TakenBack;
import org.cupbeam.lane.Told.Tried;

/**
 * What the play was told, one line each: a word, the sequence, and what belongs to it, with tabs between; no name or
 * drill can hold one. Numbers are written so that they read back to the bit.
 */
final class ToldCodec implements InputCodec<Told> {
    private static final String BEGUN = "begun";
    private static final String TRIED = "tried";
    private static final String TAKEN_BACK = "taken-back";
    private static final String PASSED = "passed";
    private static final String ENDED = "ended";

    /** Loads all that reading and writing takes. */
    static void rehearse() {
        ToldCodec codec = new ToldCodec();
        Drill drill = new Drill("rehearsal", new Stations.Ladder(1000, 0, 1), 1, Supply.EVERY_STATION, 1,
                OptionalDouble.empty(), Penalty.NONE, Turns.STATION);
        Card.of(List.of(codec.decode(codec.encode(new Begun(1, drill, List.of("nobody"), Tags.NONE, 0)))));
    }

    @Override
    public String encode(Told told) {
        if (told instanceof Begun begun) {
            return line(BEGUN, begun, DrillJson.text(begun.drill()), word(begun.tags().breaks()),
                    word(begun.tags().slope()), begun.limitMm(), String.join("\t", begun.players()));
        }
        if (told instanceof Tried tried) {
            Putt putt = tried.putt();
            return line(TRIED, tried, putt.outcome().word(), putt.finishMm(), putt.finishSdMm(), putt.lowMm(),
                    putt.highMm(), putt.overshoot(), putt.speedAtHoleMmPerS(), putt.paceMm(), putt.rim(),
                    putt.how().word());
        }
        if (told instanceof TakenBack) {
            return line(TAKEN_BACK, told);
        }
        return line(told instanceof Passed ? PASSED : ENDED, told);
    }

    @Override
    public Told decode(String line) {
        String[] fields = line.split("\t", -1);
        try {
            long sequence = Long.parseLong(fields[1]);
            return switch (fields[0]) {
                case BEGUN -> begun(sequence, fields);
                case TRIED -> tried(sequence, fields);
                case TAKEN_BACK -> new TakenBack(sequence);
                case PASSED -> new Passed(sequence);
                case ENDED -> new Ended(sequence);
                default -> throw new IllegalArgumentException("no word is " + fields[0]);
            };
        } catch (IndexOutOfBoundsException | BadMessage e) {
            throw new IllegalArgumentException(line + ": " + e.getMessage(), e);
        }
    }

    private static Begun begun(long sequence, String[] fields) throws BadMessage {
        Tags tags = new Tags(wordOrNull(Tags.Break.class, fields[3]), wordOrNull(Tags.Slope.class, fields[4]));
        return new Begun(sequence, DrillJson.read(fields[2]), List.of(fields).subList(6, fields.length), tags,
                Double.parseDouble(fields[5]));
    }

    private static Tried tried(long sequence, String[] fields) {
        double[] numbers = new double[fields.length];
        for (int i : new int[] {3, 4, 5, 6, 8, 9}) {
            numbers[i] = Double.parseDouble(fields[i]);
        }
        return new Tried(sequence, new Putt(word(Putt.Outcome.class, fields[2]), numbers[3], numbers[4], numbers[5],
                numbers[6], Boolean.parseBoolean(fields[7]), numbers[8], numbers[9], Boolean.parseBoolean(fields[10]),
                word(Putt.How.class, fields[11])));
    }

    private static String line(String word, Told told, Object... more) {
        List<String> fields = new ArrayList<>(List.of(word, Long.toString(told.sequence())));
        for (Object each : more) {
            fields.add(String.valueOf(each));
        }
        return String.join("\t", fields);
    }

    private static String word(Worded valueOrNull) {
        return valueOrNull == null ? "" : valueOrNull.word();
    }

    private static <E extends Enum<E> & Worded> E wordOrNull(Class<E> type, String word) {
        return word.isEmpty() ? null : word(type, word);
    }

    private static <E extends Enum<E> & Worded> E word(Class<E> type, String word) {
        E found = Words.find(type, word);
        if (found == null) {
            throw new IllegalArgumentException(word + " is none of " + List.of(type.getEnumConstants()));
        }
        return found;
    }
}
