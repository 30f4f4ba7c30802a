package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import org.cupbeam.commission.ArrayEstimate.Value;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigText;

/** What came of a course: the rig, its file's text, and what else is to be said of it. */
public final class Drawn {
    private static final double TENTHS = 10;

    private final Findings findings;
    private final List<String> open;
    private final ArrayEstimate estimate;
    private final Map<String, String> from = new HashMap<>();
    private final List<Double> placesMm = new ArrayList<>();

    Drawn(Findings findings, List<String> open) {
        this.findings = findings;
        this.open = open;
        estimate = findings.balls().isEmpty() ? null : findings.estimate();
        for (int i = 0; i < findings.beams().size(); i++) {
            placesMm.add(estimate == null ? findings.place(i).mm() : estimate.placesMm().get(i));
            from.put(findings.beamNames().get(i), words(i));
        }
        if (estimate != null && estimate.credible()) {
            green();
        }
    }

    private String words(int beam) {
        Place place = findings.place(beam);
        String measured = String.format(Locale.ROOT, "measured, ±%.1f", Within.of(place.sdMm()));
        if (estimate == null) {
            return measured;
        }
        return String.format(Locale.ROOT, "±%.1f by %d rolled balls%s", Within.of(estimate.placeSdsMm().get(beam)), estimate.balls(),
                place.known() ? String.format(Locale.ROOT, " and the measured %.1f ±%.1f", place.mm(), Within.of(place.sdMm())) : "");
    }

    private void green() {
        String rolled = " by " + estimate.balls() + " rolled balls";
        Value stimp = estimate.stimpFt(findings.uphillPercent);
        if (estimate.bothWays()) {
            Value uphill = estimate.uphillPercent();
            findings.uphillPercent = Math.round(uphill.is() * TENTHS) / TENTHS;
            from.put("uphill_percent", String.format(Locale.ROOT, "along the line, uphill positive; ±%.2f%s", uphill.within(), rolled));
        }
        findings.stimpFt = Math.round(stimp.is() * TENTHS) / TENTHS;
        from.put("stimp_ft", String.format(Locale.ROOT, "the green's reading in feet, as on the level; ±%.2f%s", stimp.within(), rolled));
    }

    /** The lane. */
    public Rig rig(Channel.Pull pull, OptionalInt lampGpio) {
        return findings.rig(placesMm, pull, lampGpio);
    }

    /** Its file. */
    public String text(Rig rig) {
        List<String> heading = new ArrayList<>(List.of("Found by commissioning; ± holds 95 times in 100.",
                findings.quietCounted ? "A quiet minute with the room's lights on was quiet." : "Noise was not counted, or there was some."));
        open.forEach(each -> heading.add("Open: " + each));
        return RigText.of(rig, heading, from);
    }

    /** What is allowed, and yet will not do well. */
    public static List<String> advice(Rig rig) {
        return Advice.of(rig);
    }
}
