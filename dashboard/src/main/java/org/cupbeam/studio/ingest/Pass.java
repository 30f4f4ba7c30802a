package org.cupbeam.studio.ingest;

import javax.net.ssl.SSLSocketFactory;

/**
 * How a broker lets the host in.
 *
 * @param user     null where it asks for none
 * @param password null where it asks for none
 * @param trusted  for TLS with certificates of the studio's own; null for those that the Java platform trusts
 */
public record Pass(String user, String password, SSLSocketFactory trusted) {
    public static final Pass NONE = new Pass(null, null, null);

    /** Without the password. */
    @Override
    public String toString() {
        return user == null ? "anybody" : user;
    }
}
