package org.cupbeam.lane;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.cupbeam.drill.Run;
import org.cupbeam.drill.Standing;
import org.cupbeam.drill.Supply;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Score;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Topics;
import org.cupbeam.lane.Card.Made;
import org.cupbeam.rig.Rig;

/** The score card as it is shown. */
final class ScoreSheet {
    private final Topics lane;
    private final Minutes minutes;
    private final double rigLimitMm;
    private final List<Score.BeamAt> beams;

    ScoreSheet(Topics lane, Minutes minutes, Rig rig) {
        this.lane = lane;
        this.minutes = minutes;
        rigLimitMm = rig.limitMm();
        beams = rig.beams().stream()
                .map(beam -> new Score.BeamAt(rig.channels().get(beam.channel()).name(), beam.positionMm())).toList();
    }

    Score of(Card card, GreenNow green, Instant now) {
        if (card.play() == null) {
            return new Score(lane.studio(), lane.lane(), card.sequence(), Score.State.IDLE, null, rigLimitMm,
                    Tags.NONE, null, null, OptionalInt.empty(), List.of(), last(card), green, beams, now);
        }
        Standing standing = card.play().standing();
        boolean over = standing.over();
        OptionalInt winner = over ? standing.winner() : OptionalInt.empty();
        return new Score(lane.studio(), lane.lane(), card.sequence(), over ? Score.State.OVER : Score.State.PLAYING,
                card.begun().drill(), card.begun().limitMm(), card.begun().tags(),
                minutes.duel(card, standing.round()),
                winner.isPresent() ? card.play().players().get(winner.getAsInt()) : null,
                over ? OptionalInt.empty() : OptionalInt.of(standing.turn()), players(card), last(card), green, beams,
                now);
    }

    private List<Score.Player> players(Card card) {
        List<Score.Player> players = new ArrayList<>();
        Standing standing = card.play().standing();
        for (int i = 0; i < standing.runs().size(); i++) {
            Run run = standing.runs().get(i);
            String player = card.play().players().get(i);
            players.add(new Score.Player(player, minutes.run(card, standing.round(), i), run.station(),
                    card.begun().drill().stations().atMm(run.station()), run.cleared(), run.tally().attempts(),
                    run.tally().holed(), run.tally().finishes() == 0 ? Double.NaN : run.tally().meanFinishMm(),
                    run.visit().left(), card.begun().drill().supply() == Supply.WHOLE_RUN
                            ? OptionalInt.of(run.balls()) : OptionalInt.empty(),
                    run.visit().number(), run.endedBy().orElse(null), putts(card, standing.round(), player)));
        }
        return players;
    }

    /** The newest of a player's run, oldest first. */
    private static List<Score.PuttMade> putts(Card card, int round, String player) {
        List<Made> all = card.made().stream()
                .filter(made -> made.putted().round() == round && made.putted().player().equals(player)).toList();
        return all.subList(Math.max(0, all.size() - Score.MAX_PUTTS), all.size()).stream()
                .map(made -> new Score.PuttMade(made.putted().station(), made.putt().outcome(), made.putt().finishMm(),
                        made.putt().overshoot(), made.putt().how())).toList();
    }

    private static Score.Last last(Card card) {
        if (!card.canTakeBack()) {
            return null;
        }
        Made made = card.made().get(card.made().size() - 1);
        return made.putted() == null
                ? new Score.Last(made.sequence(), null, 0, Double.NaN, made.putt())
                : new Score.Last(made.sequence(), made.putted().player(), made.putted().station(),
                        made.putted().stationMm(), made.putt());
    }
}
