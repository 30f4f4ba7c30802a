package org.cupbeam.edge.practice;

import org.cupbeam.green.Ball;

/**
 * The light that one ball takes: watches it step by step, and finds when its limbs reach and leave each light.
 *
 * <p>No closed form: a step whose two ends differ is searched for the moment of change, along a cubic through both
 * ends' places and speeds.
 */
final class Shadow implements Roll.Watch {
    private static final int HALVINGS = 40;
    private static final double NS_PER_S = 1e9;

    /** Takes each light's change: by its index, whether it is now blocked, and when. */
    @FunctionalInterface
    interface Sink {
        void change(int light, boolean blocked, long timeNs);
    }

    /** Something that a ball may block. */
    sealed interface Light permits Beam, CupCurtain {
        /** Whether a ball whose centre is there blocks it. */
        boolean blockedAt(double x, double z);
    }

    /** A beam across the line, where it truly stands: the ball's section at its height is what blocks it. */
    record Beam(double positionMm, double heightMm) implements Light {
        @Override
        public boolean blockedAt(double x, double z) {
            double along = x - positionMm;
            double up = z - heightMm;
            return along * along + up * up < Ball.RADIUS_MM * Ball.RADIUS_MM;
        }
    }

    /** A curtain of light across the cup, this high above the surface (below it: negative). */
    record CupCurtain(double heightMm) implements Light {
        @Override
        public boolean blockedAt(double x, double z) {
            return Math.abs(z - heightMm) < Ball.RADIUS_MM;
        }
    }

    private final Light[] lights;
    private final boolean[] blocked;
    private final long startNs;
    private final Sink sink;
    private boolean touchedAny;

    Shadow(Light[] lights, Body start, long startNs, Sink sink) {
        this.lights = lights;
        this.startNs = startNs;
        this.sink = sink;
        blocked = new boolean[lights.length];
        for (int i = 0; i < lights.length; i++) {
            if (lights[i].blockedAt(start.x, start.z)) {
                turn(i, startNs);
            }
        }
    }

    @Override
    public void step(Body before, Body now, double beforeS, double durationS) {
        for (int i = 0; i < lights.length; i++) {
            if (lights[i].blockedAt(now.x, now.z) != blocked[i]) {
                double share = changeAt(lights[i], blocked[i], before, now, durationS);
                turn(i, startNs + Math.round((beforeS + share * durationS) * NS_PER_S));
            }
        }
    }

    private void turn(int light, long timeNs) {
        blocked[light] = !blocked[light];
        touchedAny = true;
        sink.change(light, blocked[light], timeNs);
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

    /** Whether the ball now blocks this light. */
    boolean blocks(int light) {
        return blocked[light];
    }

    /** Whether the ball now blocks any light. */
    boolean blocksAny() {
        for (boolean each : blocked) {
            if (each) {
                return true;
            }
        }
        return false;
    }

    /** Whether it blocked any light at any time. */
    boolean touchedAny() {
        return touchedAny;
    }
}
