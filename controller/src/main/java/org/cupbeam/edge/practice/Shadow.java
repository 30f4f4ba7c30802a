package org.cupbeam.edge.practice;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.green.Ball;

/**
 * The shadow of one ball: watches it step by step, and notes when its limbs reach and leave each light.
 *
 * <p>No closed form: a step whose two ends differ is searched for the moment of change, along a cubic through both
 * ends' places and speeds. Times are in ns since the ball was set off.
 */
final class Shadow implements Roll.Watch {
    private static final int HALVINGS = 40;
    private static final double NS_PER_S = 1e9;

    /** A light's index, whether it was blocked, and when. */
    record Change(int light, boolean blocked, long timeNs) {
    }

    private final List<? extends Light> lights;
    private final boolean[] blocked;
    private final List<Change> changes = new ArrayList<>();

    Shadow(List<? extends Light> lights, Body start) {
        this.lights = lights;
        blocked = new boolean[lights.size()];
        for (int i = 0; i < blocked.length; i++) {
            if (lights.get(i).blockedAt(start.x, start.z)) {
                note(i, 0);
            }
        }
    }

    @Override
    public void step(Body before, Body now, double beforeS, double durationS) {
        for (int i = 0; i < blocked.length; i++) {
            if (lights.get(i).blockedAt(now.x, now.z) != blocked[i]) {
                double share = changeAt(lights.get(i), blocked[i], before, now, durationS);
                note(i, Math.round((beforeS + share * durationS) * NS_PER_S));
            }
        }
    }

    private void note(int light, long timeNs) {
        blocked[light] = !blocked[light];
        changes.add(new Change(light, blocked[light], timeNs));
    }

    private static double changeAt(Light light, boolean was, Body before, Body now, double h) {
        double low = 0;
        double high = 1;
        for (int i = 0; i < HALVINGS; i++) {
            double mid = (low + high) / 2;
            double x = between(before.x, before.vx, now.x, now.vx, h, mid);
            double z = between(before.z, before.vz, now.z, now.vz, h, mid);
            if (light.blockedAt(x, z) == was) {
                low = mid;
            } else {
                high = mid;
            }
        }
        return (low + high) / 2;
    }

    /** The cubic through two places with these speeds there. */
    private static double between(double from, double fromSpeed, double to, double toSpeed, double h, double share) {
        double rest = 1 - share;
        return rest * rest * (1 + 2 * share) * from + share * share * (3 - 2 * share) * to
                + h * share * rest * (rest * fromSpeed - share * toSpeed);
    }

    /** In the order in which they came. */
    List<Change> changes() {
        return changes;
    }

    /** Whether the ball blocks this light now. */
    boolean blocks(int light) {
        return blocked[light];
    }

    /** Whether the ball has passed over a beam that it never blocked, at rest where it is now. */
    boolean flewOver(Body rest) {
        for (int i = 0; i < blocked.length; i++) {
            int light = i;
            if (lights.get(i) instanceof Light.Beam beam && beam.positionMm() > 0
                    && rest.x > beam.positionMm() + Ball.RADIUS_MM
                    && changes.stream().noneMatch(change -> change.light() == light)) {
                return true;
            }
        }
        return false;
    }

    /** Whether the ball blocks any light now. */
    boolean blocksAny() {
        for (boolean each : blocked) {
            if (each) {
                return true;
            }
        }
        return false;
    }
}
