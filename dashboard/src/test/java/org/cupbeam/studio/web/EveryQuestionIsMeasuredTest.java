package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.PageQuestions.Question;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The benchmark of what pages ask (QueriesBench) knows every address of the host. A new one goes into {@link PageQuestions}. */
class EveryQuestionIsMeasuredTest {
    /** A text of a script's that begins an address; what it fills in counts as one part of it. */
    private static final Pattern ASKED = Pattern.compile("[\"`](/api/[^\"`?]*)");
    private static final Pattern SCRIPTS = Pattern.compile(".*\\.js");

    @TempDir
    Path folder;

    @Test
    void allAddressesThatTheHostAnswersToAreKnown() {
        assertThat(addresses("GET")).containsExactlyInAnyOrderElementsOf(known());
    }

    @Test
    void whatTheScriptsAskIsAnAddressOfTheHosts() throws IOException {
        TreeSet<String> all = new TreeSet<>();
        for (String method : List.of("GET", "POST", "PUT", "DELETE")) {
            all.addAll(addresses(method));
        }
        List<String> asked = asked();
        assertThat(asked).as("found in the scripts").hasSizeGreaterThan(20);
        assertThat(asked).allSatisfy(address -> assertThat(all).as("route of " + address)
                .anyMatch(route -> begins(route, address)));
    }

    private TreeSet<String> addresses(String method) {
        try (Store store = Store.open(Database.file(folder.resolve("studio.db")));
             WebServer web = new WebServer(store, new LiveLanes("t"), new StaffPin(folder.resolve("pin")))) {
            return new TreeSet<>(web.addresses(method));
        }
    }

    private static TreeSet<String> known() {
        TreeSet<String> known = new TreeSet<>(PageQuestions.PAGES);
        Stream.concat(PageQuestions.STORED.stream(), PageQuestions.WORKED_OUT.stream()).map(Question::route).forEach(known::add);
        return known;
    }

    private static List<String> asked() throws IOException {
        TreeSet<String> asked = new TreeSet<>();
        try (Stream<Path> files = Files.list(Path.of("src", "main", "resources", "web", "js"))) {
            for (Path file : files.filter(each -> SCRIPTS.matcher(each.toString()).matches()).toList()) {
                ASKED.matcher(Files.readString(file)).results().map(found -> found.group(1))
                        .forEach(asked::add);
            }
        }
        return List.copyOf(asked);
    }

    /** Texts like "/api/run/" go on with a number; "${lane}" may stand for studio and lane. */
    private static boolean begins(String route, String address) {
        String pattern = Pattern.quote(address.replaceAll("\\$\\{[^}]*\\}?", "\u0000")).replace("\u0000", "\\E.+\\Q");
        return (address.endsWith("/") ? route + "/x" : route).matches(pattern + (address.endsWith("/") ? ".+" : ""));
    }
}
