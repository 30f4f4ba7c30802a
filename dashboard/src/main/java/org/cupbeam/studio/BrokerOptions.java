package org.cupbeam.studio;

import java.io.IOException;
import java.net.BindException;
import java.nio.file.Path;
import org.cupbeam.link.LinkOptions;
import org.cupbeam.link.PasswordFile;
import org.cupbeam.link.Trust;
import org.cupbeam.studio.ingest.Pass;
import picocli.CommandLine.Option;

/** Which broker: one in this process, or one elsewhere, and how that lets us in. */
final class BrokerOptions {
    @Option(names = "--mqtt-port", paramLabel = "PORT", defaultValue = "1883",
            description = "port of the broker in this process, on loopback; 0: any (default: ${DEFAULT-VALUE})")
    private int port;

    @Option(names = "--broker", paramLabel = "URI",
            description = "use a broker that runs elsewhere, as tcp://127.0.0.1:1883, or ssl://studio:8883 for TLS, and "
                    + "start none")
    private String elsewhere;

    @Option(names = "--username", paramLabel = "NAME", description = "if that broker asks for one")
    private String user;

    @Option(names = "--password-file", paramLabel = "FILE",
            description = "whose first line is the password; nobody but its owner may read it")
    private Path passwordFile;

    @Option(names = "--ca-file", paramLabel = "FILE.pem",
            description = "certificates to trust in that broker, where they are the studio's own")
    private Path trusted;

    /** @param lanes whether there are lanes in this process, which have no names of their own at a broker */
    Pass pass(boolean lanes) throws CannotStart {
        if (elsewhere == null && (user != null || passwordFile != null || trusted != null)) {
            throw new CannotStart("the broker in this process is for this machine alone and asks for nothing",
                    "name another with --broker, or leave --username, --password-file and --ca-file away", null);
        }
        if (lanes && (user != null || trusted != null)) {
            throw new CannotStart("a lane in this process has no name and password of its own",
                    "run it by the command 'lane' of cupbeam-controller.jar, which takes them", null);
        }
        try {
            String password = passwordFile == null ? null : PasswordFile.read(passwordFile);
            if (elsewhere != null) {
                new LinkOptions(elsewhere, user, password, trusted);
            }
            return new Pass(user, password, trusted == null ? null : Trust.only(trusted));
        } catch (IOException e) {
            throw new CannotStart("--password-file: " + passwordFile + " cannot be read (" + e + ")",
                    "write the password in it", e);
        } catch (IllegalArgumentException e) {
            throw new CannotStart(e.getMessage(), "see --broker, --username, --password-file and --ca-file", e);
        }
    }

    /** The broker in this process; null where there is another. */
    EmbeddedBroker startUnlessElsewhere() throws CannotStart {
        if (elsewhere != null) {
            return null;
        }
        try {
            return new EmbeddedBroker(port);
        } catch (BindException e) {
            throw new CannotStart("port " + port + " is in use", "give the broker another with --mqtt-port, or use "
                    + "the one that runs there with --broker tcp://127.0.0.1:" + port, e);
        } catch (IOException e) {
            throw new CannotStart("the broker did not start (" + e.getMessage() + ")",
                    "use another one with --broker", e);
        }
    }

    String uri(EmbeddedBroker hereOrNull) {
        return hereOrNull == null ? elsewhere : hereOrNull.uri();
    }
}
