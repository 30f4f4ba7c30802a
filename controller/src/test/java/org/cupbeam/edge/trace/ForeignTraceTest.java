package org.cupbeam.edge.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;

/** Traces as other programs wrote them, word for word. */
class ForeignTraceTest {
    private static final Rig RIG = Rigs.withCupAnd("before-1");

    /** Icarus Verilog 11, of a small module with a sub-module, a vector, a real, an event, and $dumpoff and $dumpon. */
    @Test
    void aSimulatorsTrace() throws IOException {
        assertThat(Edges.of("""
                $date
                \tWed Nov 25 07:14:50 2026
                $end
                $version
                \tIcarus Verilog
                $end
                $timescale
                \t1ns
                $end
                $scope module lane $end
                $var event 1 ! e $end
                $var reg 1 " \\before-1 $end
                $var reg 1 # cup $end
                $var reg 8 $ n [7:0] $end
                $var real 1 % v $end
                $scope module s $end
                $var wire 1 " b $end
                $var wire 1 # cup $end
                $var wire 1 & w $end
                $upscope $end
                $upscope $end
                $enddefinitions $end
                #0
                $dumpvars
                x&
                r0 %
                bx $
                x#
                x"
                1!
                $end
                #30
                0&
                r1.5 %
                bx0001 $
                0"
                0#
                #80
                1&
                b11 $
                1"
                #150
                $dumpoff
                x&
                rNaN %
                bx $
                x#
                x"
                $end
                #210
                $dumpon
                1&
                r1.5 %
                b11 $
                1#
                0"
                1!
                $end
                #250
                x&
                1!
                z#
                #270
                1&
                1#
                #280
                0&
                0#
                #1280
                $dumpall
                0&
                r1.5 %
                b11 $
                0#
                0"
                1!
                $end
                #1380
                """, RIG)).containsExactly("before-1 on 80", "cup on 210", "before-1 off 210", "cup off 280", "end 1380");
    }

    /** sigrok-cli 0.7.2 with libsigrok 0.5.2, which also drives PulseView. */
    @Test
    void aLogicAnalysersTrace() throws IOException {
        assertThat(Edges.of("""
                META samplerate: 1000000000
                $date Wed Nov 25 07:13:30 2026 $end
                $version libsigrok 0.5.2 $end
                $comment
                  Acquisition with 8/8 channels at 1 GHz
                $end
                $timescale 1 ns $end
                $scope module libsigrok $end
                $var wire 1 ! cup $end
                $var wire 1 " strike $end
                $var wire 1 # before-1 $end
                $upscope $end
                $enddefinitions $end
                #0 0! 0" 0#
                #3277539000 1" 1#
                #3329927000 0#
                $dumpoff
                $end
                """, RIG)).containsExactly("before-1 on 3277539000", "before-1 off 3329927000", "end 3329927000");
    }
}
