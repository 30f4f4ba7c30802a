package org.cupbeam.track;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;
import net.jqwik.api.Tuple.Tuple2;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.green.Slope;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Rig;

/** Any tape: rubbish on any rig, and evenings on which balls, shoes and hands come in any order and on top of each other. */
final class AnyTape {
    private AnyTape() {
    }

    static Arbitrary<Tape> tapes() {
        return Arbitraries.oneOf(rigs().flatMap(AnyTape::rubbish), rigs().flatMap(AnyTape::evenings));
    }

    /** As wide as a rig file allows. */
    static Arbitrary<Rig> rigs() {
        Arbitrary<Double> stimps = Arbitraries.doubles().between(3, 20);
        Arbitrary<Double> steep = Arbitraries.doubles().between(-0.94, 1);
        Arbitrary<Rig> usual = Combinators.combine(Arbitraries.of(PracticeRigs.class), stimps, steep)
                .as((rigs, stimp, share) -> rigs.on(stimp, share * Slope.runawayPercent(stimp), 0));
        Arbitrary<Rig> odd = Combinators.combine(odd(), stimps, steep)
                .as((sketch, stimp, share) -> sketch.green(stimp, share * Slope.runawayPercent(stimp)).rig());
        return Arbitraries.oneOf(usual, odd)
                .flatMap(rig -> Arbitraries.of(true, false).map(pedal -> pedal ? PracticeRigs.withPedal(rig) : rig));
    }

    private static Arbitrary<RigSketch> odd() {
        Arbitrary<List<Integer>> places = Arbitraries.integers().between(-900, 1500).list().uniqueElements().ofMaxSize(7);
        return Combinators.combine(places, Arbitraries.doubles().between(1, 41), Arbitraries.of(true, false),
                Arbitraries.of(true, false)).as((beams, heightMm, cup, strike) -> {
                    RigSketch sketch = new RigSketch();
                    if (cup || beams.isEmpty()) {
                        sketch.single(Kind.CUP);
                    }
                    if (strike) {
                        sketch.single(Kind.STRIKE);
                    }
                    beams.forEach(each -> sketch.beam(each, heightMm));
                    return sketch;
                });
    }

    /** Levels repeated, gaps from none to seconds. */
    private static Arbitrary<Tape> rubbish(Rig rig) {
        Arbitrary<Integer> channel = Arbitraries.integers().between(0, rig.channels().size() - 1);
        Arbitrary<Boolean> level = Arbitraries.of(true, false);
        return Combinators.combine(channel, level, gapsNs()).as(Tuple::of).list().ofMaxSize(120).map(raw -> {
            List<Tape.Edge> edges = new ArrayList<>();
            long timeNs = 0;
            for (Tuple.Tuple3<Integer, Boolean, Long> each : raw) {
                timeNs += each.get3();
                edges.add(new Tape.Edge(each.get1(), each.get2(), timeNs));
            }
            return new Tape(rig, edges);
        });
    }

    private static Arbitrary<Long> gapsNs() {
        return Arbitraries.frequencyOf(Tuple.of(1, Arbitraries.just(0L)),
                Tuple.of(3, Arbitraries.longs().between(1, 100_000)),
                Tuple.of(3, Arbitraries.longs().between(100_000, 5_000_000)),
                Tuple.of(5, Arbitraries.longs().between(5_000_000, 400_000_000)),
                Tuple.of(2, Arbitraries.longs().between(400_000_000, 4_000_000_000L)));
    }

    private static Arbitrary<Tape> evenings(Rig rig) {
        Arbitrary<Double> gapS = Arbitraries.doubles().between(0, 6);
        Arbitrary<Double> size = Arbitraries.doubles().between(0, 1);
        Arbitrary<Integer> what = Arbitraries.integers().between(0, 5);
        return Combinators.combine(what, gapS, size, size).as(Tuple::of).list().ofMaxSize(14).map(acts -> {
            Script script = new Script(rig);
            double atS = 1;
            for (Tuple.Tuple4<Integer, Double, Double, Double> act : acts) {
                act(script, rig, act.get1(), atS, Tuple.of(act.get3(), act.get4()));
                atS += act.get2();
            }
            return Tape.of(rig, script);
        });
    }

    private static void act(Script script, Rig rig, int what, double atS, Tuple2<Double, Double> size) {
        FakeBall ball = FakeBall.stoppingAt(rig, atS, -1200 - 2000 * size.get1(), -1000 + 2500 * size.get2());
        switch (what) {
            case 0, 1 -> script.rolls(ball.pickedUpAt(ball.stopsS() + 3 * size.get1()));
            case 2 -> script.rolls(FakeBall.holedFor(rig, atS, -1200 - 2000 * size.get1(), 5 + 900 * size.get2()));
            case 3 -> walks(script, rig, atS, size);
            default -> chatters(script, rig, atS, size);
        }
        if (rig.channelOf(Kind.STRIKE) >= 0 && what < 3) {
            script.struck(atS);
        }
    }

    /** Someone walks along the line, through some of the beams. */
    private static void walks(Script script, Rig rig, double atS, Tuple2<Double, Double> size) {
        double s = atS;
        for (Beam beam : rig.beams()) {
            script.blocks(rig.channels().get(beam.channel()).name(), s, s + 0.4 * size.get1());
            s += 0.5 * size.get2();
        }
    }

    private static void chatters(Script script, Rig rig, double atS, Tuple2<Double, Double> size) {
        String name = rig.channels().get((int) (size.get1() * 0.999 * rig.channels().size())).name();
        for (int i = 0; i < 12; i++) {
            double s = atS + i * 0.01 * size.get2();
            script.blocks(name, s, s + 0.007 * size.get1());
        }
    }
}
