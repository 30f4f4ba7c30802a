package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.RigText;
import org.cupbeam.rig.file.BadFileException;

/**
 * What rolled balls told of a lane that has a rig file, as the lines that change in it, or put into the whole file.
 *
 * @param names  the beams', in the estimate's order
 * @param fileMm where the file has them
 * @param is     where they stand, and the green
 */
public record Refit(List<String> names, List<Double> fileMm, ArrayEstimate is) {
    private static final int CHARACTERS_MAX = 32 * 1024;
    private static final int PROBLEMS_MAX = 3;
    private static final double TENTHS = 10;

    public Refit {
        names = List.copyOf(names);
        fileMm = List.copyOf(fileMm);
    }

    /** The lines that change: of the green, and each beam's place. Of names, what a trace could not carry is left out. */
    public String part() {
        StringBuilder toml = new StringBuilder("# Put these numbers into the lane's rig file; pins, polarity and heights stay as they are there.\n"
                + "# Lengths in mm from the hole's centre, before the hole negative; ± holds 95 times in 100.\n\n[green]\n");
        toml.append(String.format(Locale.ROOT, "stimp_ft = %-12.1f# %s\n", is.stimpFt(0).is(), stimpFrom()));
        toml.append(String.format(Locale.ROOT, "uphill_percent = %-6.1f# %s\n", is.uphillPercent().is(), uphillFrom()));
        for (int i = 0; i < names.size(); i++) {
            toml.append(String.format(Locale.ROOT, "\n[[beam]]\nname = \"%s\"\nposition_mm = %-9.1f# %s\n",
                    names.get(i).replaceAll("[^A-Za-z0-9_-]", "?"), is.placesMm().get(i), placeFrom(i)));
        }
        return toml.toString();
    }

    /**
     * A whole file with these numbers in it, and all else as it was; comments are written anew.
     *
     * @param toml the lane's rig file
     * @throws IllegalArgumentException in words, where it is none, or another lane's, or what would come of it is no lane
     */
    public String whole(String toml) {
        if (toml.length() > CHARACTERS_MAX) {
            throw new IllegalArgumentException("A rig file has no more than " + CHARACTERS_MAX / 1024 + " thousand characters.");
        }
        Rig rig = read("rig.toml", toml);
        List<Beam> beams = new ArrayList<>();
        Map<String, String> from = new HashMap<>(Map.of("stimp_ft", stimpFrom(), "uphill_percent", uphillFrom()));
        for (Beam beam : rig.beams()) {
            String name = rig.channels().get(beam.channel()).name();
            int at = names.indexOf(name);
            if (at < 0 || rig.beams().size() != names.size()) {
                throw new IllegalArgumentException("That is another lane's rig file: its beams are " + rig.beams().stream()
                        .map(each -> rig.channels().get(each.channel()).name()).collect(Collectors.joining(", "))
                        + ", this lane's " + String.join(", ", names) + ".");
            }
            beams.add(new Beam(beam.channel(), tenth(is.placesMm().get(at)), beam.heightMm()));
            from.put(name, placeFrom(at));
        }
        beams.sort(Comparator.comparingDouble(Beam::positionMm));
        String text = RigText.of(new Rig(tenth(is.stimpFt(0).is()), tenth(is.uphillPercent().is()), rig.sidePercent(), rig.limitMm(),
                rig.channels(), beams, rig.lampGpio()),
                List.of("Beams and green as rolled balls told on the host's page; ± holds 95 times in 100."), from);
        read("what came of it", text);
        return text;
    }

    private static Rig read(String file, String toml) {
        try {
            return RigFile.parse(file, toml);
        } catch (BadFileException senseless) {
            throw new IllegalArgumentException(senseless.problems().stream().limit(PROBLEMS_MAX).map(Object::toString)
                    .collect(Collectors.joining(". ")) + ".", senseless);
        }
    }

    private String stimpFrom() {
        return String.format(Locale.ROOT, "±%.2f by %d rolled balls", is.stimpFt(0).within(), is.balls());
    }

    private String uphillFrom() {
        return String.format(Locale.ROOT, "±%.2f by %d rolled balls", is.uphillPercent().within(), is.balls());
    }

    private String placeFrom(int beam) {
        return String.format(Locale.ROOT, "±%.1f; the file had %.1f", Within.of(is.placeSdsMm().get(beam)), fileMm.get(beam));
    }

    private static double tenth(double value) {
        return Math.round(value * TENTHS) / TENTHS;
    }
}
