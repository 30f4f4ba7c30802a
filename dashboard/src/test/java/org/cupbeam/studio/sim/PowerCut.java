package org.cupbeam.studio.sim;

/** Ends a step of a process that died while it waited in it. */
final class PowerCut extends Error {
    private static final long serialVersionUID = 1L;

    PowerCut() {
        super("the process is no more", null, false, false);
    }
}
