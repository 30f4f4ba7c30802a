package org.cupbeam.track;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.cupbeam.rig.Rig;

/**
 * One thing that is not as the rig file says, all else exact.
 *
 * @param what  in the table's words
 * @param lanes the lanes that it may make of the rig's
 * @param put   how their errors become the one that is shown
 */
record ErrorSource(String what, List<TrueLane> lanes, Together put) {
    private static final long SEED = 20_261_125;
    private static final double READING = 0.015;
    private static final double SLOPE_PERCENT = 0.1;
    private static final double PUTT_SHARE = 0.007;
    private static final double CARRIER_HZ = 38_000;
    private static final double BESIDE_MM = 60;
    private static final int DRAWS = 200;

    /** How several errors become one. */
    enum Together {
        /** The largest. */
        WORST,
        /** Independent ones, all at once. */
        ROOT_SUM_SQUARE,
        /** What nine in ten draws of chance stay within. */
        NINE_IN_TEN
    }

    static List<ErrorSource> all(Rig rig) {
        int beams = rig.beams().size();
        List<ErrorSource> all = new ArrayList<>();
        all.add(worst("nothing", Stream.of(rig)));
        all.add(worst("one beam 1 mm from where the file says", both(1).boxed()
                .flatMap(mm -> IntStream.range(0, beams).mapToObj(beam -> TrueLane.moved(rig, beam, mm, 0)))));
        all.add(everyBeamOff(rig));
        all.add(worst("one pair 1 mm wider or narrower than the file says", IntStream.range(0, beams / 2).boxed()
                .flatMap(pair -> Stream.of(0.5, -0.5).map(mm -> TrueLane.moved(
                        TrueLane.moved(rig, 2 * pair, -mm, 0), 2 * pair + 1, mm, 0)))));
        all.add(worst("one beam 1 mm lower than the file says", eachBeamLower(rig, 1)));
        all.add(worst("one beam 3 mm lower", eachBeamLower(rig, 3)));
        all.add(worst("every beam 3 mm lower", Stream.of(everyBeamLower(rig, 3))));
        all.add(askew(rig, 0.5));
        all.add(askew(rig, 2));
        all.add(worst("green 1.5 % faster or slower than read", both(READING).mapToObj(share ->
                TrueLane.onGreen(rig, rig.stimpFt() * (1 + share), rig.uphillPercent()))));
        all.add(worst("slope 0.1 % more or less than the file says", both(SLOPE_PERCENT).mapToObj(percent ->
                TrueLane.onGreen(rig, rig.stimpFt(), rig.uphillPercent() + percent))));
        all.add(chance("friction ± 0.7 % from putt to putt", TrueLane.of(rig).with(random ->
                1 + PUTT_SHARE * random.nextGaussian())));
        all.add(chance("edges ± 25 µs (standard deviation)", noisy(rig, 25e-6)));
        all.add(chance("edges ± 200 µs", noisy(rig, 200e-6)));
        all.add(chance("38 kHz receivers: each edge 7 to 15 periods late (a hint)", TrueLane.of(rig)
                .with((random, channel, active) -> (7 + 8 * random.nextDouble()) / CARRIER_HZ)));
        all.add(new ErrorSource("38 kHz: one receiver blocked 158 µs too long (6 periods)", IntStream.range(0, beams)
                .mapToObj(beam -> TrueLane.of(rig).with((random, channel, active) ->
                        channel == rig.beams().get(beam).channel() && !active ? 6 / CARRIER_HZ : 0)).toList(),
                Together.WORST));
        return all;
    }

    static ErrorSource everyBeamOff(Rig rig) {
        return new ErrorSource("every beam off by its own ± 1 mm", IntStream.range(0, rig.beams().size())
                .mapToObj(beam -> TrueLane.of(TrueLane.moved(rig, beam, 1, 0))).toList(), Together.ROOT_SUM_SQUARE);
    }

    private static Stream<Rig> eachBeamLower(Rig rig, double mm) {
        return IntStream.range(0, rig.beams().size()).mapToObj(beam -> TrueLane.moved(rig, beam, 0, -mm));
    }

    private static Rig everyBeamLower(Rig rig, double mm) {
        Rig lower = rig;
        for (int beam = 0; beam < rig.beams().size(); beam++) {
            lower = TrueLane.moved(lower, beam, 0, -mm);
        }
        return lower;
    }

    /** Balls pass on one side of the hole and the other by turns, and meet the beam too late and too soon. */
    private static ErrorSource askew(Rig rig, double degrees) {
        double mm = BESIDE_MM * Math.tan(Math.toRadians(degrees));
        List<TrueLane> lanes = IntStream.range(0, rig.beams().size()).boxed().flatMap(beam -> Stream.of(0, 1)
                .map(side -> new TrueLane(ball -> TrueLane.moved(rig, beam, ball % 2 == side ? mm : -mm, 0),
                        random -> 1, (random, channel, active) -> 0))).toList();
        return new ErrorSource(String.format(Locale.ROOT, "one beam %.1f° from square, balls %.0f mm beside the line",
                degrees, BESIDE_MM), lanes, Together.WORST);
    }

    /** Edges whose times scatter with this standard deviation. */
    static TrueLane noisy(Rig rig, double sdS) {
        return TrueLane.of(rig).with((random, channel, active) -> sdS * random.nextGaussian());
    }

    private static DoubleStream both(double size) {
        return DoubleStream.of(-size, size);
    }

    private static ErrorSource worst(String what, Stream<Rig> rigs) {
        return new ErrorSource(what, rigs.map(TrueLane::of).toList(), Together.WORST);
    }

    /** What chance does, in many draws of it. */
    static ErrorSource chance(String what, TrueLane lane) {
        return new ErrorSource(what, IntStream.range(0, DRAWS).mapToObj(draw -> lane).toList(),
                Together.NINE_IN_TEN);
    }

    /** What it does to a finish, mm; NaN where the rig does not see the ball. */
    double errorMm(Rig said, int before, double finishMm) {
        double[] errors = IntStream.range(0, lanes.size()).mapToObj(i -> lanes.get(i).told(said, before, finishMm, SEED + i))
                .mapToDouble(told -> told == null ? Double.NaN : Math.abs(told.finishMm() - finishMm)).sorted().toArray();
        return switch (put) {
            case WORST -> errors[errors.length - 1];
            case ROOT_SUM_SQUARE -> Math.sqrt(DoubleStream.of(errors).map(mm -> mm * mm).sum());
            case NINE_IN_TEN -> errors[errors.length * 9 / 10];
        };
    }
}
