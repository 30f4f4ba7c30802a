package org.cupbeam.event;

import java.util.HashSet;
import java.util.List;
import org.cupbeam.drill.Worded;

/** Commands and their answers as JSON. */
public final class CommandJson {
    private enum Word implements Worded { START, TAKE_BACK, MISS, VOID, PASS, END, TEST_ROLLS }

    private CommandJson() {
    }

    public static byte[] encode(Command command) {
        return JsonOut.bytes(to -> {
            to.text("id", command.id()).word("command", word(command.ask())).text("by", command.by());
            if (command.expect().isPresent()) {
                to.sequence("expect", command.expect().getAsLong());
            }
            if (command.ask() instanceof Command.Start start) {
                to.object("drill", drill -> DrillJson.write(drill, start.drill())).texts("players", start.players())
                        .object("tags", tags -> Parts.tags(tags, start.tags()));
            } else if (command.ask() instanceof Command.Miss miss) {
                to.tenth("finish_mm", miss.finishMm());
            } else if (command.ask() instanceof Command.Void attempt) {
                to.sequence("of", attempt.of());
            } else if (command.ask() instanceof Command.TestRolls test) {
                to.flag("on", test.on());
            }
        });
    }

    /** @throws BadMessage with the command's id where that could be read, so that it can be answered */
    public static Command decode(byte[] payload) throws BadMessage {
        Fields from = JsonIn.object(payload);
        String id = Parts.id(from, "id");
        try {
            return new Command(id, from.text("by", Score.MAX_NAME), from.sequenceIfThere("expect"), ask(from));
        } catch (BadMessage e) {
            throw e.withId(id);
        }
    }

    public static byte[] encode(Answer answer) {
        return JsonOut.bytes(to -> to.text("id", answer.id()).flag("accepted", answer.accepted())
                .text("reason", answer.reason()).sequence("sequence", answer.sequence()));
    }

    public static Answer decodeAnswer(byte[] payload) throws BadMessage {
        Fields from = JsonIn.object(payload);
        return new Answer(Parts.id(from, "id"), from.flag("accepted"), from.textOrNull("reason", Parts.MAX_TEXT),
                from.sequence("sequence"));
    }

    private static Command.Ask ask(Fields from) throws BadMessage {
        return switch (from.word("command", Word.class)) {
            case START -> new Command.Start(DrillJson.read(from.object("drill")), players(from),
                    Parts.tags(from, "tags"));
            case TAKE_BACK -> new Command.TakeBack();
            case MISS -> new Command.Miss(from.numberOrNaN("finish_mm"));
            case VOID -> new Command.Void(from.sequence("of"));
            case PASS -> new Command.Pass();
            case END -> new Command.End();
            case TEST_ROLLS -> new Command.TestRolls(from.flag("on"));
        };
    }

    private static List<String> players(Fields from) throws BadMessage {
        List<String> players = from.texts("players", Score.MAX_PLAYERS, Score.MAX_NAME);
        if (players.isEmpty() || new HashSet<>(players).size() != players.size()) {
            throw from.bad("players", "is " + players, "give 1 to " + Score.MAX_PLAYERS + " names, none twice");
        }
        return players;
    }

    private static Word word(Command.Ask ask) {
        if (ask instanceof Command.Start) {
            return Word.START;
        }
        if (ask instanceof Command.TakeBack) {
            return Word.TAKE_BACK;
        }
        if (ask instanceof Command.Miss) {
            return Word.MISS;
        }
        if (ask instanceof Command.Void) {
            return Word.VOID;
        }
        if (ask instanceof Command.TestRolls) {
            return Word.TEST_ROLLS;
        }
        return ask instanceof Command.Pass ? Word.PASS : Word.END;
    }
}
