package org.cupbeam.edge.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.cupbeam.edge.trace.VcdReader.Step;
import org.cupbeam.rig.Rig;

/** Whatever bytes come, the reader ends, with edges in order of time or with a reason and a line. */
class VcdFuzzTest {
    private static final Rig RIG = Rigs.withCupAnd("past-1");
    private static final String TRACE = """
            $timescale 1 us $end
            $scope module lane $end
            $var wire 1 ! past-1 $end
            $var wire 1 ab cup $end
            $var wire 8 c n [7:0] $end
            $enddefinitions $end
            #0 $dumpvars 0! 0ab b0 c $end
            #5 1! #7 1ab 0! $comment x $end b0101 c #9 0ab #10
            """;

    @Property(tries = 2000)
    void anyBytes(@ForAll @Size(max = 300) byte[] bytes) {
        readsOrTellsWhy(bytes);
    }

    @Property(tries = 2000)
    void anyWordsOfATrace(@ForAll("words") List<String> words) {
        readsOrTellsWhy(String.join(" ", words).getBytes(StandardCharsets.UTF_8));
    }

    @Property(tries = 2000)
    void aGoodTraceWithOneByteChangedAndTheRestCutOff(@ForAll @IntRange(max = 300) int at, @ForAll byte to,
            @ForAll @IntRange(min = 1, max = 400) int length) {
        byte[] bytes = TRACE.getBytes(StandardCharsets.UTF_8);
        bytes[at % bytes.length] = to;
        readsOrTellsWhy(java.util.Arrays.copyOf(bytes, Math.min(length, bytes.length)));
    }

    @Provide
    Arbitrary<List<String>> words() {
        return Arbitraries.of("$timescale", "$end", "1us", "10", "fs", "$scope", "$var", "wire", "real", "1", "!", "past-1",
                "cup", "\"", "$var wire 1 ! past-1 $end", "$var wire 1 \" cup $end", "$timescale 1 ns $end",
                "$enddefinitions", "$enddefinitions $end", "#0", "#5", "#99999999999999999999", "1!", "0!", "x\"", "1\"",
                "b1 !", "r1 !", "$dumpvars", "$comment", "$dumpoff", "META", "\n", "\r\n", "\0", "ü")
                .list().ofMaxSize(60);
    }

    private static void readsOrTellsWhy(byte[] bytes) {
        long[] lastNs = new long[1];
        try (VcdReader reader = new VcdReader(new ByteArrayInputStream(bytes), "t.vcd", RIG)) {
            assertThat(reader.drainTo((channel, active, timeNs) -> {
                assertThat(timeNs).isGreaterThanOrEqualTo(lastNs[0]);
                lastNs[0] = timeNs;
            })).isEqualTo(Step.END);
        } catch (TraceException reason) {
            assertThat(reason).hasMessageMatching("(?s)t\\.vcd:\\d+: .{8,}");
            assertThat(reason.line()).isPositive();
        } catch (IOException other) {
            throw new AssertionError(other);
        }
    }
}
