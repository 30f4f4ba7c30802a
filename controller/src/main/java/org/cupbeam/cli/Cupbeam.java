package org.cupbeam.cli;

/** The lane controller's commands. */
public final class Cupbeam {
    private Cupbeam() {
    }

    public static void main(String[] args) {
        System.err.println("no command yet");
        System.exit(2);
    }
}
