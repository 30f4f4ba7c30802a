package org.cupbeam.studio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.cupbeam.link.PasswordFile;
import org.cupbeam.studio.web.access.Proxies;
import org.cupbeam.studio.web.access.ScrapeToken;
import picocli.CommandLine.Option;

/** Where the pages are to be had, and by which way. */
final class DoorOptions {
    @Option(names = "--port", paramLabel = "PORT", defaultValue = "8080",
            description = "port of the pages (default: ${DEFAULT-VALUE})")
    private int port;

    @Option(names = "--listen", paramLabel = "ADDRESS", defaultValue = Door.HERE,
            description = "address to have the pages on; 0.0.0.0: all of this machine's. Anything but this computer "
                    + "itself needs a staff PIN (default: ${DEFAULT-VALUE})")
    private String listen;

    @Option(names = "--proxy", paramLabel = "ADDRESS", split = ",",
            description = "address of a reverse proxy, as this host sees it; only what comes from there is believed to "
                    + "be passed on for others. Needs a staff PIN")
    private List<String> proxies = List.of();

    @Option(names = "--scrape-token-file", paramLabel = "FILE",
            description = "whose first line lets a program have /metrics (Authorization: Bearer …) that is not signed in; "
                    + "nobody but its owner may read it")
    private Path scrapeToken;

    int port() {
        return port;
    }

    /** @param folder of all data, the PIN's file among it */
    Door door(Path folder) throws CannotStart {
        Door door = Door.at(listen, port, folder, believed(), scraper());
        keptSecret(folder.resolve(Door.PIN_FILE));
        if (!door.isHere()) {
            throw new CannotStart("this computer has no address " + listen, "give one of its own with --listen, or "
                    + "0.0.0.0 for all of them", null);
        }
        try {
            door.check();
            return door;
        } catch (IllegalStateException e) {
            throw new CannotStart(e.getMessage(), "set one with 'pin --data " + folder + "', or start without --listen and "
                    + "--proxy and set one at http://localhost:" + port + "/sign-in", e);
        }
    }

    private Proxies believed() throws CannotStart {
        try {
            return Proxies.at(proxies);
        } catch (IllegalArgumentException e) {
            throw new CannotStart("--proxy: " + e.getMessage(), "it is the address that the proxy's requests come from", e);
        }
    }

    private ScrapeToken scraper() throws CannotStart {
        try {
            return scrapeToken == null ? ScrapeToken.NONE : ScrapeToken.of(PasswordFile.read(scrapeToken));
        } catch (IOException e) {
            throw new CannotStart("--scrape-token-file: " + scrapeToken + " cannot be read (" + e + ")", "write the token in it", e);
        } catch (IllegalArgumentException e) {
            throw new CannotStart("--scrape-token-file: " + e.getMessage(), "a good one: head -c 24 /dev/urandom | base64", e);
        }
    }

    /** The PIN's hash is slow to try, and a PIN is short all the same. */
    private static void keptSecret(Path pinFile) throws CannotStart {
        try {
            Optional<String> objection = Files.exists(pinFile) ? PasswordFile.objection(pinFile) : Optional.empty();
            if (objection.isPresent()) {
                throw new CannotStart(objection.get(), "and set another PIN, if somebody may have read it", null);
            }
        } catch (IOException e) {
            throw new CannotStart("the staff PIN's file cannot be looked at (" + e + ")", "see to " + pinFile, e);
        }
    }
}
