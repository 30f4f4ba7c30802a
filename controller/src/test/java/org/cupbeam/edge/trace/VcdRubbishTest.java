package org.cupbeam.edge.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is no trace is refused, by line and with the reason. */
class VcdRubbishTest {
    private static final Rig RIG = Rigs.withCupAnd("past-1");
    private static final String HEAD = """
            $timescale 1 us $end
            $scope module lane $end
            $var wire 1 ! past-1 $end
            $var wire 1 " cup $end
            $upscope $end
            $enddefinitions $end
            """;

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "#5;#4;     | 8 | time goes back to #4 (4000 ns) from 5000 ns",
        "#;         | 7 | a time without digits",
        "#12a;      | 7 | \"#12a\" is no time",
        "#-1;       | 7 | \"#-1\" is no time",
        "#9223372036854776; | 7 | beyond 292 years",
        "#99999999999999999999; | 7 | beyond 292 years",
        "#1;1?;     | 8 | no signal has the code \"?\"",
        "#1;1!!;    | 8 | no signal has the code \"!!\"",
        "#1;1 !;    | 8 | \"1\" lacks the code of its signal",
        "b101 ?;    | 7 | no signal has the code \"?\"",
        "b101;      | 8 | the trace ends between a value and the code",
        "hello;     | 7 | \"hello\" is neither a time (#…) nor a value",
        "$var wire 1 ? x $end; | 7 | $var has no meaning after $enddefinitions",
        "$comment;  | 8 | the trace ends in a $comment that lacks its $end",
        "#1;1!;#;   | 9 | a time without digits",
    })
    void aChangeThatMakesNoSense(String changes, long line, String reason) {
        refuses(HEAD + changes.strip().replace(';', '\n'), line, reason);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "$timescale 1 us $end  | $timescale 2 us $end  | 1 | \"2us\" is no unit of time; 1, 10 or 100 of",
        "$timescale 1 us $end  | $timescale us $end    | 1 | \"us\" is no unit of time",
        "$timescale 1 us $end  | $version x $end       | 6 | no $timescale",
        "$timescale 1 us $end  | $timescale 1 us       | 2 | the $timescale before this $scope lacks its $end",
        "wire 1 ! past-1       | wire 1 !              | 3 | $var lacks a part",
        "wire 1 ! past-1       | wire 2 ! past-1       | 3 | past-1 is a wire of size 2; a sensor's wire has size 1",
        "wire 1 ! past-1       | real 1 ! past-1       | 3 | past-1 is a real of size 1",
        "wire 1 ! past-1       | wire 1 ! other        | 6 | the rig's past-1 is not in the trace, which has other, cup",
        "wire 1 ! past-1       | wire 1 \" past-1      | 4 | cup has the code of past-1",
        "$upscope $end         | $var wire 1 ? cup $end| 5 | cup is declared in line 4 too, as another signal",
        "$upscope $end         | $timescale 1ns $end   | 5 | a second $timescale, unlike the first",
        "$upscope $end         | 1!                    | 5 | \"1!\" comes before $enddefinitions",
        "$upscope $end         | $dumpvars 1! $end     | 5 | $dumpvars comes before $enddefinitions",
        "$upscope $end         | bogus                 | 5 | \"bogus\" comes before $enddefinitions, where only $keywords may",
        "$enddefinitions $end  | $enddefinitions       | 7 | $enddefinitions without its $end",
        "$enddefinitions $end  | $comment              | 8 | the trace ends before $enddefinitions",
    })
    void definitionsThatMakeNoSense(String instead, String of, long line, String reason) {
        refuses(HEAD.replace(instead.strip(), of.strip()) + "#1\n", line, reason);
    }

    @Test
    void whatIsNoTextAtAll() {
        refuses("", 1, "the trace ends before $enddefinitions");
        refuses("\u001F\u008B\b", 1, "byte 0x1F is no text; is the trace compressed");
        refuses(HEAD + "#1\n1!\n\0\0\0\0", 9, "byte 0x00 is no text");
        refuses(HEAD + "#1\n" + "0".repeat(200_000), 8, "a word of more than 65536 bytes");
    }

    @Test
    void rubbishIsShownShortAndHarmless() {
        assertThatThrownBy(() -> Edges.of(HEAD + "1\u001B[31m" + "y".repeat(99), RIG))
                .hasMessage("t.vcd:7: no signal has the code \"\\x1B[31m" + "y".repeat(35)
                        + "…\"; the trace ends in this line without a line end:"
                        + " if its recording was cut off, remove the line");
    }

    @Test
    void namesAndCodesOfSignalsAreShownShortAndHarmlessToo() {
        refuses(HEAD.replace("wire 1 !", "wi\u001B[1m 1 !").replace("1 !", "\b" + "9".repeat(300) + " !"), 3,
                "past-1 is a wi\\u001B[1m of size \\u0008" + "9".repeat(34) + "…; a sensor's wire has size 1");
        refuses(HEAD.replace("1 ! past-1", "1 ! \u0007" + "n".repeat(99)), 6, "which has \\u0007" + "n".repeat(34) + "…, cup");
        refuses(HEAD.replace("1 ! past-1", "1 " + "\u007F!".repeat(40) + " past-1"), 3, "\"\\u007F!\\u007F!");
        refuses(HEAD.replace("1 us", "1 \u001Bus"), 1, "\"1\\u001Bus\" is no unit of time");
    }

    /** Under the hash that Java's own strings have, all of these fall on one place, and it took 48 s here. */
    @Test
    @Timeout(20)
    void manyCodesMadeToCollideHoldNothingUp() throws Exception {
        StringBuilder trace = new StringBuilder(HEAD.replace("$enddefinitions $end\n", ""));
        for (int i = 0; i < IdCodes.CODES_MAX; i++) {
            trace.append("$var wire 1 ");
            for (int bit = 0; bit < 16; bit++) {
                trace.append((i >> bit & 1) == 0 ? "Aa" : "BB");
            }
            trace.append(" n $end\n");
        }
        assertThat(Edges.of(trace + "$enddefinitions $end\n#1 1!\n", RIG)).containsExactly("past-1 on 1000", "end 1000");
    }

    private static void refuses(String trace, long line, String reason) {
        byte[] bytes = trace.getBytes(StandardCharsets.ISO_8859_1);
        assertThatThrownBy(() -> new VcdReader(new ByteArrayInputStream(bytes), "t.vcd", RIG)
                .drainTo((channel, active, timeNs) -> { }))
                .isInstanceOfSatisfying(TraceException.class, error -> {
                    assertThat(error).hasMessageStartingWith("t.vcd:" + line + ": ").hasMessageContaining(reason.strip());
                    assertThat(error.line()).isEqualTo(line);
                });
    }
}
