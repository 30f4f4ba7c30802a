package org.cupbeam.lane;

import java.util.LinkedHashMap;
import java.util.Map;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.Putt;
import org.cupbeam.journal.Entry;
import org.cupbeam.journal.Journal;
import org.cupbeam.journal.JournalException;
import org.cupbeam.lane.Desk.Asked;
import org.cupbeam.rig.file.Shown;

/** Acts on commands, each once, and sees that each is answered. The lane's thread alone. */
final class Clerk {
    /** Further off than this, no miss is believed. */
    private static final double FURTHEST_MM = 50_000;
    /** An answer takes one character more, which the ellipsis may need. */
    private static final int REASON_MAX = 399;

    private final Game game;
    private final Scribe scribe;
    private final Outlet outlet;
    private final RollTrial rolls;
    private final Map<String, Answer> answered = new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Answer> eldest) {
            return size() > Journal.ANSWERS;
        }
    };

    Clerk(Game game, Scribe scribe, Outlet outlet, RollTrial rolls) {
        this.game = game;
        this.scribe = scribe;
        this.outlet = outlet;
        this.rolls = rolls;
    }

    void serve(Asked asked) {
        Command command = asked.command();
        Answer before = answered.get(command.id());
        if (before != null) {
            repeat(before);
            return;
        }
        try {
            decide(command, asked.objection() != null ? asked.objection() : objection(command));
        } catch (IllegalArgumentException nonsense) {
            refuse(command, nonsense.getMessage());
        }
    }

    private void decide(Command command, String objection) {
        JournalException fault = scribe.fault();
        if (fault != null) {
            refuseAtOnce(command, "the lane cannot write to its disk now (" + fault.getMessage() + ")");
        } else if (objection != null) {
            refuse(command, objection);
        } else if (act(command)) {
            answered.put(command.id(), new Answer(command.id(), true, null, game.card().sequence()));
        } else {
            refuseAtOnce(command, "the lane's disk cannot keep up; ask again in a minute");
        }
    }

    /** What the first answer speaks of may not be on the disk yet; this one comes after it. */
    private void repeat(Answer before) {
        if (!scribe.take(Entry.empty(), null, before) && !before.accepted()) {
            outlet.answer(before);
        }
    }

    private void refuse(Command command, String reason) {
        Answer no = no(command, reason);
        if (!scribe.take(Entry.<Told>empty().with(no), null, no)) {
            outlet.answer(no);
        }
    }

    /** Nothing was done, so nothing has to be on the disk before it is said. */
    private void refuseAtOnce(Command command, String reason) {
        Answer no = no(command, reason);
        scribe.take(Entry.<Told>empty().with(no), null, null);
        outlet.answer(no);
    }

    private Answer no(Command command, String reason) {
        Answer no = new Answer(command.id(), false, Shown.of(reason, REASON_MAX), game.card().sequence());
        answered.put(command.id(), no);
        return no;
    }

    private String objection(Command command) {
        long now = game.card().sequence();
        if (command.expect().isPresent() && command.expect().getAsLong() != now) {
            return "the lane has moved on since: look at the score again, and ask again if it still holds";
        }
        if (command.ask() instanceof Command.TakeBack) {
            return game.card().canTakeBack() ? null : "there is no attempt to take back";
        }
        if (command.ask() instanceof Command.Miss miss) {
            return Math.abs(miss.finishMm()) > FURTHEST_MM ? "no ball finishes 50 m from a hole: look at the number" : null;
        }
        if (command.ask() instanceof Command.TestRolls test) {
            return !test.on() ? null : game.card().underWay()
                    ? "a run goes on, and putts are not counted during a test: end the run first" : rolls.objection();
        }
        if (command.ask() instanceof Command.Pass) {
            return game.card().objectionToPass();
        }
        return command.ask() instanceof Command.End ? game.card().objectionToEnd() : null;
    }

    /** False where it could not be taken down, and so was not done. */
    private boolean act(Command command) {
        String id = command.id();
        if (command.ask() instanceof Command.Start start) {
            boolean begun = game.begin(start, id);
            if (begun) {
                rolls.end();
            }
            return begun;
        }
        if (command.ask() instanceof Command.TakeBack) {
            return game.takeBack(command.by(), id);
        }
        if (command.ask() instanceof Command.Miss miss) {
            return game.missed(miss.finishMm(), id);
        }
        if (command.ask() instanceof Command.Void attempt) {
            return game.voided(attempt.of(), command.by(), id);
        }
        if (command.ask() instanceof Command.TestRolls test) {
            return tests(test.on(), new Answer(id, true, null, game.card().sequence()));
        }
        return command.ask() instanceof Command.Pass ? game.pass(id) : game.end(id);
    }

    /** Nothing of a test is written down but that it was asked for, once. */
    private boolean tests(boolean on, Answer yes) {
        boolean taken = scribe.take(Entry.<Told>empty().with(yes), null, yes);
        if (taken && on) {
            rolls.begin();
        } else if (taken) {
            rolls.end();
        }
        return taken;
    }
}
