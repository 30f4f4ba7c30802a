package org.cupbeam.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Channel.Level;
import org.cupbeam.rig.Channel.Pull;
import org.junit.jupiter.api.Test;

/** What is written of a rig reads back as that rig. */
class RigTextTest {
    private static final long SEED = Long.getLong("cupbeam.seed", System.nanoTime());
    private static final int RIGS = 300;

    @Test
    void anyRigReadsBackEqual() throws Exception {
        Random random = new Random(SEED);
        for (int i = 0; i < RIGS; i++) {
            Rig rig = any(random);
            String text = RigText.of(rig);
            assertThat(RigFile.parse("rig.toml", text)).as("rig %d of seed %d:%n%s", i, SEED, text).isEqualTo(rig);
        }
    }

    /** Each key that a file may lack, at a value that is not what it is taken for where it lacks. */
    @Test
    void noKeyThatMayBeLeftOutIsLost() throws Exception {
        Rig rig = new Rig(11.25, -0.3, 1.75, 600, List.of(new Channel("cup", Kind.CUP, 4, Level.LOW, Pull.OFF),
                new Channel("strike", Kind.STRIKE, 5, Level.LOW, Pull.DOWN), new Channel("pedal", Kind.PEDAL, 6, Level.LOW, Pull.OFF),
                new Channel("far", Kind.BEAM, 7, Level.LOW, Pull.DOWN), new Channel("near", Kind.BEAM, 8, Level.LOW, Pull.OFF)),
                List.of(new Beam(4, -310.125, 19.5), new Beam(3, 1e-4, 22)), OptionalInt.of(53));

        assertThat(RigFile.parse("rig.toml", RigText.of(rig))).isEqualTo(rig);
        assertThat(RigText.of(rig)).contains("side_percent = 1.75", "pull = \"off\"", "pull = \"down\"", "[lamp]\ngpio = 53");
    }

    @Test
    void wordsOfWhereANumberComesFromStayInTheirLine() throws Exception {
        Rig rig = any(new Random(SEED));
        String text = RigText.of(rig, List.of("first\n[cup]\ngpio = 1"), Map.of("stimp_ft", "by balls\n[[beam]]", "limit_mm", "measured"));

        assertThat(RigFile.parse("rig.toml", text)).as("seed %d", SEED).isEqualTo(rig);
        assertThat(text).startsWith("# first [cup] gpio = 1\n").contains("# by balls [[beam]]\n", "# measured\n");
    }

    private static Rig any(Random random) {
        List<Integer> gpios = new ArrayList<>(IntStream.rangeClosed(0, 53).boxed().toList());
        Collections.shuffle(gpios, random);
        List<Channel> channels = new ArrayList<>();
        for (Kind kind : List.of(Kind.CUP, Kind.STRIKE, Kind.PEDAL)) {
            if (random.nextBoolean()) {
                channels.add(channel(kind.name().toLowerCase(Locale.ROOT), kind, gpios, random));
            }
        }
        List<Beam> beams = new ArrayList<>();
        double atMm = -19_000;
        for (int i = 1 + random.nextInt(6); i > 0; i--) {
            atMm += 1 + 5_000 * random.nextDouble();
            beams.add(new Beam(channels.size(), atMm, 1 + 40 * random.nextDouble()));
            channels.add(channel("b_" + i + "-X", Kind.BEAM, gpios, random));
        }
        return new Rig(3 + 15 * random.nextDouble(), random.nextDouble() * 3 - 1.5, random.nextBoolean() ? 0 : random.nextDouble() * 3 - 1.5,
                54 + 9_000 * random.nextDouble(), channels, beams,
                random.nextBoolean() ? OptionalInt.empty() : OptionalInt.of(gpios.remove(0)));
    }

    private static Channel channel(String name, Kind kind, List<Integer> gpios, Random random) {
        return new Channel(name, kind, gpios.remove(0), Level.values()[random.nextInt(Level.values().length)],
                Pull.values()[random.nextInt(Pull.values().length)]);
    }
}
