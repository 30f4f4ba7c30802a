package org.cupbeam.cli;

/** The version, from the jar's manifest. */
final class Version {
    private Version() {
    }

    static String text() {
        String version = Version.class.getPackage().getImplementationVersion();
        return version == null ? "unpackaged" : version;
    }
}
