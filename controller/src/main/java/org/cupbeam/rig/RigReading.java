package org.cupbeam.rig;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import org.cupbeam.green.Hole;
import org.cupbeam.green.Slope;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Channel.Level;
import org.cupbeam.rig.Channel.Pull;
import org.cupbeam.rig.file.BadFileException;
import org.cupbeam.rig.file.Section;

/** One reading of a rig file's tables into a {@link Rig}: what each key means, its range, and what must not meet. */
final class RigReading {
    private static final Set<String> TAKEN_NAMES = Set.of("cup", "strike", "pedal", "lamp");
    private static final double SAME_POSITION_MM = 1;
    /** A ball is 42.67 mm high; a beam that grazes its top sees nothing useful. */
    private static final double HIGHEST_BEAM_MM = 41;
    /** A green's reading is good to some 5 %, so this close to the grade of no return nothing can be told. */
    private static final double STEEPEST_SHARE = 0.95;

    private final Section top;
    private final List<Channel> channels = new ArrayList<>();
    private final List<Beam> beams = new ArrayList<>();
    private final Map<Integer, String> gpioOwners = new HashMap<>();

    RigReading(Section top) {
        this.top = top;
    }

    Rig rig() throws BadFileException {
        double stimpFt = Double.NaN;
        double uphillPercent = Double.NaN;
        double sidePercent = 0;
        Section green = top.table("green", "write [green], and below it stimp_ft and uphill_percent");
        if (green != null) {
            stimpFt = green.number("stimp_ft", 3, 20, "the green's reading in feet, from 3 to 20");
            uphillPercent = green.number("uphill_percent", -20, 20,
                    "the slope along the line toward the hole, from -20 to 20, uphill positive, 0 where it is level");
            sidePercent = green.numberOr("side_percent", 0, -20, 20,
                    "the slope across the line, from -20 to 20, falling to the left positive");
            requireThatBallsStop(green, stimpFt, uphillPercent, sidePercent);
            green.nothingElse();
        }
        double limitMm = limitMm();
        single("cup", Kind.CUP);
        single("strike", Kind.STRIKE);
        single("pedal", Kind.PEDAL);
        OptionalInt lampGpio = lampGpio();
        beams();
        top.nothingElse();
        requireSomethingToSee();
        top.throwIfAnyProblem();
        beams.sort(Comparator.comparingDouble(Beam::positionMm));
        return new Rig(stimpFt, uphillPercent, sidePercent, limitMm, channels, beams, lampGpio);
    }

    private static void requireThatBallsStop(Section green, double stimpFt, double uphillPercent, double sidePercent) {
        double steepestPercent = Math.hypot(uphillPercent, sidePercent);
        double runawayPercent = stimpFt > 0 ? Slope.runawayPercent(stimpFt) : Double.NaN;
        if (steepestPercent >= STEEPEST_SHARE * runawayPercent) {
            String key = Math.abs(sidePercent) > Math.abs(uphillPercent) ? "side_percent" : "uphill_percent";
            green.problem(key, String.format(Locale.ROOT,
                    "on a slope of %.1f %% no ball comes to rest at stimp %.1f, it runs away", steepestPercent, stimpFt),
                    String.format(Locale.ROOT, "less than %.1f %% would do", STEEPEST_SHARE * runawayPercent));
        }
    }

    private double limitMm() {
        Section overshoot = top.table("overshoot", "write [overshoot], and below it limit_mm");
        if (overshoot == null) {
            return Double.NaN;
        }
        double limitMm = overshoot.number("limit_mm", Hole.RADIUS_MM, 10_000,
                "how far past the hole's centre a miss may finish, from 54 (the hole's edge) to 10000");
        overshoot.nothingElse();
        return limitMm;
    }

    private void single(String key, Kind kind) {
        Section table = top.tableOrNull(key);
        if (table != null) {
            channel(table, key, kind);
            table.nothingElse();
        }
    }

    private OptionalInt lampGpio() {
        Section table = top.tableOrNull("lamp");
        if (table == null) {
            return OptionalInt.empty();
        }
        int gpio = gpio(table, "lamp");
        table.nothingElse();
        return OptionalInt.of(gpio);
    }

    private void beams() {
        Map<String, Integer> lineOfName = new HashMap<>();
        for (Section table : top.tables("beam")) {
            String name = name(table, lineOfName);
            int channel = channels.size();
            channel(table, name == null ? "another beam" : name, Kind.BEAM);
            double positionMm = table.number("position_mm", -20_000, 20_000,
                    "along the line from the hole's centre in mm, from -20000 to 20000, before the hole negative");
            double heightMm = table.number("height_mm", 1, HIGHEST_BEAM_MM,
                    "above the surface in mm, from 1 to 41: a ball is 42.67 high, and must block the beam");
            table.nothingElse();
            requireAPlaceOfItsOwn(table, positionMm);
            beams.add(new Beam(channel, positionMm, heightMm));
        }
    }

    /** A beam's name; null where it has none. */
    private String name(Section table, Map<String, Integer> lineOfName) {
        String remedy = "a name of its own, of up to 32 letters, digits, - and _, such as \"past-1\"";
        String name = table.text("name", remedy);
        if (name == null) {
            return null;
        }
        if (TAKEN_NAMES.contains(name)) {
            table.problem("name", '"' + name + "\" is the name of another sensor", remedy);
        } else if (lineOfName.containsKey(name)) {
            table.problem("name", '"' + name + "\" is also the beam's in line " + lineOfName.get(name), remedy);
        } else if (!Channel.isName(name)) {
            table.problem("name", "a trace cannot carry this name", remedy);
        } else {
            lineOfName.put(name, table.lineOf("name"));
        }
        return name;
    }

    private void channel(Section table, String name, Kind kind) {
        int gpio = gpio(table, name);
        Level active = table.wordOr("active", Level.HIGH);
        Pull pull = table.wordOr("pull", Pull.UP);
        channels.add(new Channel(name, kind, gpio, active, pull));
    }

    private int gpio(Section table, String owner) {
        String remedy = "the SoC's line number (BCM), from 0 to 53, each used once";
        int gpio = table.whole("gpio", 0, 53, remedy);
        String other = gpio < 0 ? null : gpioOwners.putIfAbsent(gpio, owner);
        if (other != null) {
            table.problem("gpio", gpio + " is already taken by " + other, remedy);
        }
        return gpio;
    }

    private void requireAPlaceOfItsOwn(Section table, double positionMm) {
        for (Beam other : beams) {
            if (Math.abs(other.positionMm() - positionMm) < SAME_POSITION_MM) {
                table.problem("position_mm", positionMm + " is where " + channels.get(other.channel()).name()
                        + " stands", "two beams at one place tell no more than one; set them at least 1 mm apart");
                return;
            }
        }
    }

    private void requireSomethingToSee() {
        boolean sees = channels.stream().anyMatch(each -> each.kind() == Kind.CUP || each.kind() == Kind.BEAM);
        if (!sees) {
            top.problem("cup", "missing, and no [[beam]] either, so that no sensor sees a ball",
                    "[cup] or one [[beam]] would do");
        }
    }
}
