package org.cupbeam.edge.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a trace means. The forms are those of IEEE 1364-2005, clause 18, unless a test says otherwise. */
class VcdReaderTest {
    private static final Rig RIG = Rigs.withCupAnd("past-1");
    private static final String HEAD = """
            $timescale 1 us $end
            $scope module lane $end
            $var wire 1 ! past-1 $end
            $var wire 1 " cup $end
            $upscope $end
            $enddefinitions $end
            """;

    @Test
    void edgesComeInOrderWithTheirTimes() throws IOException {
        assertThat(read(HEAD + "#0\n$dumpvars\n0!\n0\"\n$end\n#5\n1!\n#7\n1\"\n0!\n#9\n0\"\n"))
                .containsExactly("past-1 on 5000", "cup on 7000", "past-1 off 7000", "cup off 9000", "end 9000");
    }

    @Test
    void theLastTimeMayBeLaterThanTheLastEdge() throws IOException {
        assertThat(read(HEAD + "#5\n1!\n#8\n")).containsExactly("past-1 on 5000", "end 8000");
        assertThat(read(HEAD + "#5\n1!\n#8")).containsExactly("past-1 on 5000", "end 8000");
    }

    @Test
    void aFirstValueIsAnEdgeOnlyIfItIsActive() throws IOException {
        assertThat(read(HEAD + "$dumpvars 1! 0\" $end #3")).containsExactly("past-1 on 0", "end 3000");
    }

    @Test
    void aValueThatRepeatsIsNoEdge() throws IOException {
        assertThat(read(HEAD + "#1 1! #2 1! #3 0! #4 0!"))
                .containsExactly("past-1 on 1000", "past-1 off 3000", "end 4000");
    }

    @Test
    void anUnknownValueClaimsNothing() throws IOException {
        assertThat(read(HEAD + "#0 x! Z\" #1 1! #2 X! #3 1! #4 z! #5 0!"))
                .containsExactly("past-1 on 1000", "past-1 off 5000", "end 5000");
    }

    @Test
    void aDumpSwitchedOffAndOnAgainKeepsTheState() throws IOException {
        assertThat(read(HEAD + "#1 1! #2 $dumpoff x! x\" $end #9 $dumpon 1! 1\" $end #11 $dumpall 1! 1\" $end"))
                .containsExactly("past-1 on 1000", "cup on 9000", "end 11000");
    }

    @ParameterizedTest
    @CsvSource({
        "1 s, 5000000000", "10 ms, 50000000", "100us, 500000", "1us, 5000", "1 ns, 5", "100 ns, 500", "100 ps, 0"})
    void anyTimescaleWillDo(String timescale, long fiveUnitsNs) throws IOException {
        assertThat(read(HEAD.replace("1 us", timescale) + "#5 1!")).contains("past-1 on " + fiveUnitsNs);
    }

    @Test
    void timesFinerThanANanosecondAreCutToIt() throws IOException {
        assertThat(read(HEAD.replace("1 us", "1 fs") + "#999999 1! #18446744073709551615 0!"))
                .containsExactly("past-1 on 0", "past-1 off 18446744073709", "end 18446744073709");
        assertThat(read(HEAD.replace("1 us", "10\n ps") + "#00399 1!")).contains("past-1 on 3");
    }

    @Test
    void lineEndsOfEveryKindAndProseInAnyLanguageWillDo() throws IOException {
        String trace = "$date heute $end $version Prüfstand 3 µs $end\n$comment $var wire 1 ! none $end\n" + HEAD
                + "#1\n1!\n$comment 0! ü $end\n#2\n0!\n";
        assertThat(read(trace.replace("\n", "\r\n"))).containsExactly("past-1 on 1000", "past-1 off 2000", "end 2000");
        assertThat(read(trace.replace(" ", "\t\n"))).containsExactly("past-1 on 1000", "past-1 off 2000", "end 2000");
    }

    @Test
    void scopesMayNestAndOtherSignalsArePassedOver() throws IOException {
        assertThat(read("""
                $timescale
                    1 us
                $end
                $attrbegin misc 02 kind 1 $end
                $scope module top $end
                $var reg 8 #9 count [7:0] $end
                $var real 64 r speed $end
                $var integer 32 i n $end
                $scope begin inner $end
                $var wire 1 #9! \\past-1 $end
                $var wire 1 ~~ cup [0] $end
                $upscope $end
                $upscope $end
                $enddefinitions $end
                b0000xz01 #9
                r1.25e3 r
                #4
                1#9!
                b10 i
                b1 ~~
                sIDLE r
                #5
                B0 ~~
                """)).containsExactly("past-1 on 4000", "cup on 4000", "cup off 5000", "end 5000");
    }

    @Test
    void oneSignalMayBeDeclaredInTwoScopes() throws IOException {
        assertThat(read(HEAD.replace("$upscope", "$var wire 1 ! past-1 $end $var wire 1 ! alias $end $upscope") + "#1 1!"))
                .containsExactly("past-1 on 1000", "end 1000");
    }

    @Test
    void aTraceWithoutAnyChangeIsATrace() throws IOException {
        assertThat(read(HEAD)).containsExactly("end 0");
    }

    @Test
    void readingAllocatesNothingPerEdge() throws IOException {
        StringBuilder trace = new StringBuilder(HEAD);
        for (int i = 0; i < 200_000; i++) {
            trace.append('#').append(i * 7L).append(i % 2 == 0 ? "\n1!\n" : "\n0!\n");
        }
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long self = Thread.currentThread().getId();
        VcdReader reader = new VcdReader(
                new ByteArrayInputStream(trace.toString().getBytes(StandardCharsets.US_ASCII)), "t.vcd", RIG);
        for (int i = 0; i < 1000; i++) {
            reader.next();
        }
        long before = threads.getThreadAllocatedBytes(self);
        int edges = 0;
        while (reader.next() == VcdReader.Step.EDGE) {
            edges++;
        }
        long allocated = threads.getThreadAllocatedBytes(self) - before; // before any assertion, which may load its library
        assertThat(edges).isEqualTo(199_000);
        assertThat(allocated).as("bytes for all of them").isLessThan(edges / 10);
    }

    private static List<String> read(String trace) throws IOException {
        return Edges.of(trace, RIG);
    }
}
