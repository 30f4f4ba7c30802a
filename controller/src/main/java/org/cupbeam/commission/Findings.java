package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.RolledBall;

/** What is known of a lane by now: its sensors' lines, the balls, and what was entered. */
final class Findings {
    private static final Place FIRST_BEAM = new Place(0, 1e-3);
    private static final double USUAL_HEIGHT_MM = 21;
    private static final double TENTHS = 10;

    /** As a rig file's reader has them. */
    private static final List<Kind> IN_ORDER = List.of(Kind.CUP, Kind.STRIKE, Kind.PEDAL, Kind.BEAM);

    private final Lines lines;
    private final List<Wanted> wanted;
    private final Map<String, Found> found = new LinkedHashMap<>();
    private final List<RolledBall> balls = new ArrayList<>();
    private final Place[] places;
    double heightMm = USUAL_HEIGHT_MM;
    double limitMm = 914.4;
    double uphillPercent;
    double stimpFt = 10;
    boolean quietCounted;

    Findings(Lines lines, List<Wanted> wanted) {
        this.lines = lines;
        this.wanted = List.copyOf(wanted);
        places = new Place[wanted.size()];
        forgetPlaces();
    }

    void found(Found each) {
        found.put(each.sensor().name(), each);
        lines.name(each.line(), each.sensor().name());
    }

    void forget(Wanted sensor) {
        Found was = found.remove(sensor.name());
        if (was != null) {
            lines.name(was.line(), null);
        }
    }

    Collection<Found> all() {
        return found.values();
    }

    Found of(Wanted sensor) {
        return found.get(sensor.name());
    }

    /** In the order along the line. */
    List<Found> beams() {
        return wanted.stream().filter(each -> each.kind() == Kind.BEAM && found.containsKey(each.name()))
                .map(each -> found.get(each.name())).toList();
    }

    List<String> beamNames() {
        return beams().stream().map(each -> each.sensor().name()).toList();
    }

    List<Integer> beamGpios() {
        return beams().stream().map(each -> lines.gpio(each.line())).toList();
    }

    List<RolledBall> balls() {
        return balls;
    }

    void place(int beam, Place place) {
        places[beam] = place;
    }

    Place place(int beam) {
        return places[beam];
    }

    void forgetPlaces() {
        Arrays.fill(places, Place.UNKNOWN);
    }

    boolean anyPlaceKnown() {
        return IntStream.range(0, beams().size()).anyMatch(each -> places[each].known());
    }

    /** Whether balls went both ways, and so tell the slope. */
    boolean rolledBothWays() {
        return balls.stream().anyMatch(RolledBall::toward) && balls.stream().anyMatch(each -> !each.toward());
    }

    /** Spacings from the first beam on, whose place is taken for 0. */
    ArrayEstimate spacings() {
        Place[] fromFirst = new Place[beams().size()];
        Arrays.fill(fromFirst, Place.UNKNOWN);
        fromFirst[0] = FIRST_BEAM;
        return estimate(List.of(fromFirst));
    }

    /** Places from the hole's centre; at least one must be known, and a ball rolled. */
    ArrayEstimate estimate() {
        return estimate(List.of(places).subList(0, beams().size()));
    }

    private ArrayEstimate estimate(List<Place> at) {
        return new ArrayFit(balls, at, at.stream().map(each -> Chord.at(heightMm)).toList()).estimate();
    }

    /**
     * Gives the beams their names in the order in which a ball comes to them.
     *
     * @param order the beams by their present numbers, as a putt meets them
     * @return whether any had another name
     */
    boolean nameInOrder(List<Integer> order) {
        List<Found> before = beams();
        boolean same = order.equals(IntStream.range(0, order.size()).boxed().toList());
        for (int i = 0; i < order.size() && !same; i++) {
            Found line = before.get(order.get(i));
            found(new Found(before.get(i).sensor(), line.line(), line.active()));
        }
        if (!same) {
            balls.replaceAll(ball -> new RolledBall(ball.toward(), ball.crossings().stream().map(each ->
                    new RolledBall.Crossing(order.indexOf(each.beam()), each.onNs(), each.offNs())).toList()));
        }
        return !same;
    }

    /** What was found, and what was measured, in a line each. */
    List<String> inWords() {
        List<String> words = new ArrayList<>();
        if (!found.isEmpty()) {
            words.add("Found: " + found.values().stream().map(each -> each.sensor().name() + " GPIO " + lines.gpio(each.line())
                    + " " + each.active().name().toLowerCase(Locale.ROOT)).collect(Collectors.joining(", ")));
        }
        List<String> names = beamNames();
        String measured = IntStream.range(0, names.size()).filter(each -> places[each].known()).mapToObj(each -> String.format(Locale.ROOT,
                "%s %.1f ±%.1f", names.get(each), places[each].mm(), Within.of(places[each].sdMm()))).collect(Collectors.joining(", "));
        if (!measured.isEmpty()) {
            words.add("Measured: " + measured);
        }
        return words;
    }

    /** The lane, with these places of its beams. */
    Rig rig(List<Double> placesMm, Channel.Pull pull, OptionalInt lampGpio) {
        List<Channel> channels = new ArrayList<>();
        List<Beam> beams = new ArrayList<>();
        for (Kind kind : IN_ORDER) {
            for (Wanted each : wanted) {
                Found is = each.kind() == kind ? found.get(each.name()) : null;
                if (is != null && kind == Kind.BEAM) {
                    beams.add(new Beam(channels.size(), Math.round(placesMm.get(beams.size()) * TENTHS) / TENTHS, heightMm));
                }
                if (is != null) {
                    channels.add(new Channel(each.name(), kind, lines.gpio(is.line()), is.active(), pull));
                }
            }
        }
        return new Rig(stimpFt, uphillPercent, 0, limitMm, channels, beams, lampGpio);
    }
}
