package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.Command;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Tags;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Each role at each address: let in or refused. What is refused stands here once more, so that the table of the code cannot say
 * something else unseen; an address that neither names fails.
 */
class StaffAccessTest {
    private static final List<String> METHODS = List.of("GET", "POST", "PUT", "DELETE");
    private static final Map<String, String> REAL =
            Map.of("{studio}", "mill", "{lane}", "lane-1", "{id}", "999", "{key}", "ladder");
    /** What an owner of some of the studios may not, nor anybody else but one of all. */
    private static final Set<String> OF_ALL = Set.of("GET /metrics", "PUT /api/pin", "PUT /api/usage/hours", "POST /api/import");
    private static final Set<String> OWNERS = Set.of("GET /api/players/export", "GET /api/runs/export", "GET /api/player/{id}/export",
            "GET /api/record/export", "GET /api/usage/export", "GET /api/green/{studio}/{lane}/export", "GET /api/league/{id}/export", "DELETE /api/player/{id}",
            "GET /staff", "GET /api/staff", "POST /api/staff", "POST /api/staff/{id}/put-back", "PUT /api/staff/{id}",
            "PUT /api/staff/{id}/secret", "DELETE /api/staff/{id}");
    private static final Set<String> NOT_THE_COACHS = Set.of("GET /usage", "GET /api/usage");
    private static final Set<String> NOT_THE_DESKS = Set.of("GET /insight", "GET /insight/{id}", "GET /advice/{id}", "GET /report/{id}",
            "GET /green/{studio}/{lane}/test", "GET /api/insight/{id}", "GET /api/insight/{id}/next", "GET /api/report/{id}",
            "GET /api/changes", "GET /api/green/{studio}/{lane}/test", "POST /api/player/{id}/notes", "POST /api/run/{id}/notes",
            "POST /api/attempt/{id}/notes", "POST /api/attempt/{id}/void", "POST /api/attempt/{id}/restore",
            "POST /api/run/{id}/reassign", "POST /api/player/{id}/merge", "DELETE /api/note/{id}", "DELETE /api/drills/{id}",
            "POST /api/drills", "POST /api/drills/{id}/put-back", "POST /api/drill-text/read", "POST /api/drill-text/write",
            "POST /api/drill-rehearsal", "POST /api/green/{studio}/{lane}/test/keep",
            "POST /api/health/{studio}/{lane}/places/file", "PUT /api/drills/{id}", "PUT /api/green/{studio}/{lane}/range",
            "GET /leagues", "GET /league/{id}", "GET /api/leagues", "GET /api/leagues/choices", "GET /api/league/{id}", "POST /api/leagues",
            "POST /api/league/{id}/put-back", "PUT /api/league/{id}", "DELETE /api/league/{id}");

    @TempDir
    private Path folder;
    private Staffed host;

    @BeforeEach
    void start() throws Exception {
        host = Staffed.byName(folder);
    }

    @AfterEach
    void stop() {
        host.close();
    }

    @Test
    void everyAddressHasItsLineAndEveryLineItsAddress() {
        assertThat(Addresses.all()).containsExactlyInAnyOrderElementsOf(addresses());
    }

    @Test
    void anOwnerOfAllMayEverything() throws Exception {
        sees("Ada", Set.of());
    }

    @Test
    void anOwnerOfSomeMayAllButWhatIsTheWholeHosts() throws Exception {
        sees("Olga", OF_ALL);
    }

    @Test
    void aCoachMayAllAboutPlayAndPlayersButTakeItAlongForgetOrSayWhoSignsIn() throws Exception {
        sees("Carl", union(OF_ALL, OWNERS, NOT_THE_COACHS));
    }

    @Test
    void theDeskMayPlayersPlayAndUsage() throws Exception {
        sees("Dora", union(OF_ALL, OWNERS, NOT_THE_DESKS));
    }

    @Test
    void theDeskBeginsAndEndsAGameAndTheCoachDoesAllElseInIt() throws Exception {
        List<Command.Ask> begins = List.of(new Command.Start(DrillFile.preset("ladder"), List.of("Ada"), Tags.NONE), new Command.End());
        List<Command.Ask> corrects = List.of(new Command.TakeBack(), new Command.Miss(Double.NaN), new Command.Void(1), new Command.Pass(),
                new Command.TestRolls(true));

        for (Command.Ask ask : begins) {
            assertThat(asks("Dora", ask)).as("%s", ask).isEqualTo(504);
        }
        for (Command.Ask ask : corrects) {
            assertThat(asks("Dora", ask)).as("%s", ask).isEqualTo(403);
            assertThat(asks("Carl", ask)).as("%s, no lane answers here", ask).isEqualTo(504);
        }
    }

    @Test
    void aPageThatIsForOthersSaysSoAndIsAPage() throws Exception {
        HttpResponse<String> answer = host.as("Dora").get("/insight");

        assertThat(answer.statusCode()).isEqualTo(403);
        assertThat(answer.headers().firstValue("Content-Type").orElseThrow()).startsWith("text/html");
        assertThat(answer.body()).contains("another role").doesNotContain("insight-players.js");
    }

    private int asks(String name, Command.Ask ask) throws Exception {
        byte[] command = CommandJson.encode(new Command("c-" + ask.hashCode(), "x", OptionalLong.empty(), ask));
        return host.as(name).send("POST", "/api/lanes/mill/lane-1/commands",
                new ObjectMapper().readTree(command)).statusCode();
    }

    /** Whoever is asked for nothing but what they may not is refused each time; for the rest, never for who they are. */
    private void sees(String name, Set<String> refused) throws Exception {
        assertThat(addresses()).as("what is refused is there").containsAll(refused);
        List<String> wrong = new ArrayList<>();
        Visit visit = host.as(name);
        for (String address : addresses()) {
            if (address.endsWith(" /api/session")) {
                continue; // signs out
            }
            String[] parts = address.split(" ");
            HttpResponse<String> answer = visit.send(parts[0], real(parts[1]), parts[0].equals("GET") ? null : Map.of());
            boolean no = answer.statusCode() == 403;
            if (no != refused.contains(address) || answer.statusCode() == 401 || answer.statusCode() == 500) {
                wrong.add(address + " answers " + answer.statusCode() + " " + answer.body());
            }
        }
        assertThat(wrong).isEmpty();
    }

    private Set<String> addresses() {
        Set<String> all = new TreeSet<>();
        METHODS.forEach(method -> host.web.addresses(method).forEach(path -> all.add(method + " " + path)));
        assertThat(all).hasSizeGreaterThan(80);
        return all;
    }

    @SafeVarargs
    private static Set<String> union(Set<String>... parts) {
        Set<String> all = new TreeSet<>();
        for (Set<String> each : parts) {
            all.addAll(each);
        }
        return all;
    }

    private static String real(String path) {
        String real = path;
        for (Map.Entry<String, String> each : REAL.entrySet()) {
            real = real.replace(each.getKey(), each.getValue());
        }
        return real;
    }
}
