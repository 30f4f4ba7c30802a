package org.cupbeam.studio;

/** The studio host's commands. */
public final class Studio {
    private Studio() {
    }

    public static void main(String[] args) {
        System.err.println("no command yet");
        System.exit(2);
    }
}
