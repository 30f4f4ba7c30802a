package org.cupbeam.studio.sim;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Stations;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.Tags;

/**
 * Whoever plays at a lane: putts, steps on the pedal, asks for things at the studio's page and asks again, the same thing,
 * until it is answered; and waits while the lane has no power. Keeps the truth of it.
 */
final class Golfer {
    private static final Tags TAGS = new Tags(Tags.Break.STRAIGHT, Tags.Slope.LEVEL);
    private final Agenda agenda;
    private final Dice dice;
    private final LaneMachine lane;
    private final HostMachine host;
    private int left;
    private int asked;
    private Truth truth = new Truth();
    private int certain;
    private int life;
    private boolean busy = true;
    private String pendingId;
    private Deed pending;

    Golfer(Agenda agenda, Dice dice, LaneMachine lane, HostMachine host, int deeds) {
        this.agenda = agenda;
        this.dice = dice;
        this.lane = lane;
        this.host = host;
        this.left = deeds;
        lane.whenBack(this::lookAgain);
    }

    Truth truth() {
        return truth;
    }

    boolean isDone() {
        return left == 0 && !busy;
    }

    void begin() {
        agenda.after(dice.upToNs(3 * Agenda.S), this::next);
    }

    /** A lane that comes back has what was told of, and of what was not, a beginning. */
    private void lookAgain() {
        life++;
        if (pending != null && lane.lane().accepted(pendingId)) {
            happened();
        }
        int attempts = 0;
        int takenBack = 0;
        for (Event event : lane.lane().events()) {
            attempts += event.data() instanceof Data.Attempt ? 1 : 0;
            takenBack += event.data() instanceof Data.Correction correction
                    && correction.what() == Data.Correction.What.TAKEN_BACK ? 1 : 0;
        }
        truth = truth.asWritten(certain, attempts, takenBack);
        certain = truth.deeds();
    }

    /** What was asked has been done, whether the answer has come or not. */
    private void happened() {
        truth.add(pending);
        certain = truth.deeds();
        pending = null;
    }

    private void next() {
        if (left == 0) {
            busy = false;
            return;
        }
        if (!lane.isOn()) {
            agenda.after(Agenda.S, this::next);
            return;
        }
        left--;
        Deed deed = choose();
        if (deed instanceof Deed.AtTheLane done) {
            doIt(done);
        } else {
            pending = deed;
            pendingId = "c-" + lane.name + "-" + ++asked;
            ask((Deed.Asked) deed, 0);
        }
    }

    private void rest() {
        agenda.after(50 * Agenda.MS + dice.upToNs(4 * Agenda.S), this::next);
    }

    private Deed choose() {
        boolean playing = truth.play() != null && !truth.play().standing().over();
        int throwOf = dice.between(1, 20);
        if (throwOf == 1 || truth.play() == null && throwOf < 6) {
            return new Deed.Start(drill(), players());
        } else if (throwOf == 2 && playing && truth.play().standing().canPass()) {
            return new Deed.Pass();
        } else if (throwOf == 3 && playing && truth.play().standing().begun()) {
            return new Deed.End();
        } else if (throwOf <= 5 && truth.canTakeBack()) {
            return throwOf == 4 ? new Deed.TakeBack() : new Deed.TakeBackAsked();
        } else if (throwOf == 6 && written().findAny().isPresent()) {
            return new Deed.Void(dice.between(0, (int) written().count() - 1));
        } else if (throwOf <= 9) {
            return new Deed.Entered(dice.between(-1_500, 3_000));
        }
        return dice.chance(0.6) ? new Deed.Hole() : new Deed.Miss();
    }

    private Drill drill() {
        return new Drill("Drill " + dice.between(1, 3), new Stations.Ladder(1000, 500, dice.between(1, 4)),
                dice.between(1, 3), dice.one(List.of(Supply.values())), 1, OptionalDouble.empty(),
                dice.one(List.of(Penalty.values())), dice.one(List.of(Turns.values())));
    }

    private List<String> players() {
        return List.of("Ana", "Bo", "Cy").subList(0, dice.between(1, 3));
    }

    /** A gesture that the power cut short has perhaps happened, and perhaps not. */
    private void doIt(Deed.AtTheLane deed) {
        int began = life;
        truth.add(deed);
        Runnable then = () -> agenda.after(750 * Agenda.MS, this::rest);
        if (deed instanceof Deed.Hole) {
            pulse(LaneMachine.CUP, 20, began, then);
        } else if (deed instanceof Deed.Miss) {
            pulse(LaneMachine.PEDAL, 100, began, then);
        } else {
            pulse(LaneMachine.PEDAL, 100, began, () -> agenda.after(100 * Agenda.MS,
                    () -> pulse(LaneMachine.PEDAL, 100, began, then)));
        }
    }

    private void pulse(int channel, int ms, int began, Runnable then) {
        edge(channel, true, began);
        agenda.after(ms * Agenda.MS, () -> {
            edge(channel, false, began);
            then.run();
        });
    }

    private void edge(int channel, boolean active, int began) {
        if (life == began) {
            lane.edge(channel, active);
        }
    }

    /** Asks, and again with the same id until there is an answer. */
    private void ask(Deed.Asked deed, int times) {
        Optional<Answer> answer = host.answer(pendingId);
        if (answer.isPresent()) {
            if (answer.get().accepted() && pending != null) {
                happened();
            }
            pending = null;
            rest();
            return;
        }
        if (times % 4 == 0 && lane.isOn()) {
            host.ask(lane.topics, new Command(pendingId, "Jo", OptionalLong.empty(), command(deed)));
        }
        agenda.after(Agenda.S, () -> ask(deed, times + 1));
    }

    private Command.Ask command(Deed.Asked deed) {
        if (deed instanceof Deed.Start start) {
            return new Command.Start(start.drill(), start.players(), TAGS);
        } else if (deed instanceof Deed.Entered entered) {
            return new Command.Miss(entered.finishMm());
        } else if (deed instanceof Deed.Void one) {
            return new Command.Void(sequence(one.attempt()));
        } else if (deed instanceof Deed.TakeBackAsked) {
            return new Command.TakeBack();
        }
        return deed instanceof Deed.Pass ? new Command.Pass() : new Command.End();
    }

    private long sequence(int attempt) {
        return written().skip(attempt).findFirst().orElseThrow().sequence();
    }

    private Stream<Event> written() {
        return lane.lane().events().stream().filter(event -> event.data() instanceof Data.Attempt);
    }
}
