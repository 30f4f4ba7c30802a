package org.cupbeam.commission;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Channel.Kind;

/**
 * A sensor that a lane is to have.
 *
 * @param kind what it is
 * @param name as the rig file will name it
 */
public record Wanted(Kind kind, String name) {
    private static final int MOST = 20;
    /** The usual rigs, with the beams in the order in which a putt comes to them. */
    private static final Map<String, String> RIGS = rigs();

    private static Map<String, String> rigs() {
        Map<String, String> rigs = new LinkedHashMap<>();
        rigs.put("gate", "past-1,past-2,cup,pedal");
        rigs.put("struck", "past-1,past-2,cup,strike,pedal");
        rigs.put("standard", "before-1,before-2,past-1,past-2,cup,pedal");
        rigs.put("full", "before-1,before-2,behind-1,behind-2,past-1,past-2,cup,strike,pedal");
        return rigs;
    }

    /**
     * The sensors that a text asks for: {@code gate}, {@code struck}, {@code standard}, {@code full}, or names with commas
     * between them, where cup, strike and pedal are those, and all others are beams, in the order along the line.
     *
     * @throws IllegalArgumentException in words, where it makes no sense
     */
    public static List<Wanted> of(String text) {
        List<String> names = Arrays.asList(RIGS.getOrDefault(text.toLowerCase(Locale.ROOT), text).split(",", -1));
        if (names.size() > MOST) {
            throw new IllegalArgumentException(names.size() + " sensors are more than the " + MOST + " that a board takes");
        }
        for (String name : names) {
            if (!Channel.isName(name) || name.equals("lamp")) {
                throw new IllegalArgumentException("\"" + name + "\" is no sensor's name; give "
                        + String.join(", ", RIGS.keySet()) + ", or names of letters, digits, - and _ with commas between");
            }
        }
        if (names.stream().distinct().count() < names.size()) {
            throw new IllegalArgumentException("a sensor is named twice; each needs a name of its own");
        }
        List<Wanted> wanted = names.stream().map(name -> new Wanted(kind(name), name)).toList();
        if (wanted.stream().noneMatch(each -> each.kind == Kind.BEAM || each.kind == Kind.CUP)) {
            throw new IllegalArgumentException("no sensor among these sees a ball; add cup or a beam");
        }
        return wanted;
    }

    private static Kind kind(String name) {
        return switch (name) {
            case "cup" -> Kind.CUP;
            case "strike" -> Kind.STRIKE;
            case "pedal" -> Kind.PEDAL;
            default -> Kind.BEAM;
        };
    }
}
