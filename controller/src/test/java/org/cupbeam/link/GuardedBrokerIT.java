package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.Key;
import java.security.KeyStore;
import java.util.Base64;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A Mosquitto that asks for a password, or speaks TLS. */
@Timeout(60)
class GuardedBrokerIT {
    @TempDir
    Path folder;
    private Mosquitto broker;
    private Link link;

    @AfterEach
    void close() throws Exception {
        if (link != null) {
            link.close();
        }
        if (broker != null) {
            broker.close();
        }
    }

    private void start(LinkOptions options) {
        link = new Link(options, Lane.TOPICS, "boot", new FakeOutbox(), System::nanoTime, new Random(1), command -> true);
        link.health(Lane.report());
        link.start();
    }

    @Test
    void aUserWithTheRightPasswordIsLetInAndOneWithoutIsToldWhyNot() throws Exception {
        Path passwords = folder.resolve("passwords");
        run(Mosquitto.program("mosquitto_passwd").toString(), "-b", "-c", passwords.toString(), "lane", "right");
        broker = new Mosquitto(folder, List.of("allow_anonymous false", "password_file " + passwords));
        broker.start();
        start(new LinkOptions(broker.uri(), "lane", "wrong", null));
        Patience.until("it says why", () -> String.valueOf(link.trouble()).contains("uthorized"));
        link.close();
        start(new LinkOptions(broker.uri(), "lane", "right", null));
        Patience.until("online", link::online);
    }

    @Test
    void tlsIsSpokenWithABrokerWhoseCertificateIsTrustedAndWithNoOther() throws Exception {
        Mosquitto.program("mosquitto");
        Path store = folder.resolve("broker.p12");
        run(Path.of(System.getProperty("java.home"), "bin", "keytool").toString(), "-genkeypair", "-alias", "broker",
                "-keyalg", "RSA", "-dname", "CN=localhost", "-ext", "san=dns:localhost", "-validity", "2",
                "-storetype", "PKCS12", "-keystore", store.toString(), "-storepass", "changeit");
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream from = Files.newInputStream(store)) {
            keys.load(from, "changeit".toCharArray());
        }
        Key key = keys.getKey("broker", "changeit".toCharArray());
        Path certificate = pem("CERTIFICATE", keys.getCertificate("broker").getEncoded());
        broker = new Mosquitto(folder, List.of("allow_anonymous true", "certfile " + certificate,
                "keyfile " + pem("PRIVATE KEY", key.getEncoded())));
        broker.start();
        String uri = "ssl://localhost:" + broker.port();
        start(LinkOptions.open(uri));
        Patience.until("it says why", () -> String.valueOf(link.trouble()).contains("PKIX"));
        link.close();
        start(new LinkOptions(uri, null, null, certificate));
        Patience.until("online", link::online);
    }

    private Path pem(String kind, byte[] content) throws Exception {
        return Files.writeString(folder.resolve(kind.replace(' ', '-') + ".pem"), "-----BEGIN " + kind + "-----\n"
                + Base64.getMimeEncoder(64, "\n".getBytes(StandardCharsets.US_ASCII)).encodeToString(content)
                + "\n-----END " + kind + "-----\n");
    }

    private static void run(String... command) throws Exception {
        Process process = new ProcessBuilder(command).redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        assertThat(process.waitFor(30, TimeUnit.SECONDS) && process.exitValue() == 0).as(command[0]).isTrue();
    }
}
