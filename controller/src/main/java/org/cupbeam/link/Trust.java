package org.cupbeam.link;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManagerFactory;

/** TLS that trusts a studio's own certificates, as a broker with a certificate of its own making needs. */
public final class Trust {
    private Trust() {
    }

    /** @throws IllegalArgumentException for a file that cannot be read as PEM certificates */
    public static SSLSocketFactory only(Path pem) {
        try (InputStream text = Files.newInputStream(pem)) {
            KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
            store.load(null, null);
            for (Certificate each : CertificateFactory.getInstance("X.509").generateCertificates(text)) {
                store.setCertificateEntry("studio-" + store.size(), each);
            }
            TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
            trust.init(store);
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(null, trust.getTrustManagers(), null);
            return context.getSocketFactory();
        } catch (IOException | GeneralSecurityException e) {
            throw new IllegalArgumentException(pem + ": cannot be read as certificates (" + e.getMessage()
                    + "); give a PEM file", e);
        }
    }
}
