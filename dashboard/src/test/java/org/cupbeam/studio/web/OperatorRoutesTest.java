package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.Scenes;
import org.cupbeam.studio.ingest.Vitals;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.access.ScrapeToken;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class OperatorRoutesTest {
    private static final String TOKEN = "a token of thirty-two characters";
    /** Prometheus' text exposition format 0.0.4, a sample's line, from memory of its documentation. */
    private static final Pattern SAMPLE = Pattern.compile(
            "([a-zA-Z_:][a-zA-Z0-9_:]*)(\\{[a-z_]+=\"[^\"]*\"(,[a-z_]+=\"[^\"]*\")*})? (-?[0-9.E+-]+|NaN|\\+Inf)");
    private static final Pattern OURS = Pattern.compile("cupbeam_[a-z_]+");

    @TempDir
    private Path folder;
    private final AtomicBoolean broker = new AtomicBoolean(true);
    private final LiveLanes lanes = new LiveLanes("test");
    private Store store;
    private WebServer web;

    @BeforeEach
    void start() throws Exception {
        StaffPin pin = StaffPin.quick(folder.resolve("staff-pin"));
        pin.set("481516");
        store = Store.open(Database.file(folder.resolve("studio.db")));
        lanes.askBroker(broker::get);
        lanes.health(new Topics("home", "lane-1"), Scenes.online(1, "j1"));
        lanes.health(new Topics("home", "lane-2"), Scenes.lost(1));
        web = new WebServer(store, lanes, pin);
        long[] commits = new long[Vitals.limitsS().length + 1];
        commits[0] = 3;
        commits[commits.length - 1] = 1;
        web.operatedBy(() -> new Vitals(true, false, null, 7, 40, 2, 5, 6, commits, 12.5), ScrapeToken.of(TOKEN));
        web.start("127.0.0.1", 0);
    }

    @AfterEach
    void stop() {
        web.close();
        store.close();
    }

    @Test
    void whetherItLivesAndIsReadyIsToldToAnybodyAndNothingElse() throws Exception {
        assertThat(get("/alive", null).body()).isEqualTo("alive\n");
        assertThat(get("/ready", null).body()).isEqualTo("ready\n");
        broker.set(false);
        awaitReady(false);
        broker.set(true);
        awaitReady(true);
        assertThat(get("/alive", null).statusCode()).isEqualTo(200);
    }

    @Test
    void metricsAreForStaffAndWhoeverHasTheToken() throws Exception {
        assertThat(get("/metrics", null).statusCode()).isEqualTo(303);
        assertThat(get("/metrics", "Bearer another token of some length").statusCode()).isEqualTo(303);
        assertThat(get("/metrics", "Bearer " + TOKEN).statusCode()).isEqualTo(200);
        assertThat(get("/api/players", "Bearer " + TOKEN).statusCode()).as("the token is for nothing else").isEqualTo(401);
        assertThat(new Visit(web.port()).signIn("481516", "Kim").get("/metrics").statusCode()).isEqualTo(200);
    }

    @Test
    void eachLineIsASampleAndSaysWhatIs() throws Exception {
        HttpResponse<String> answer = get("/metrics", "Bearer " + TOKEN);
        assertThat(answer.headers().firstValue("Content-Type").orElseThrow()).startsWith("text/plain; version=0.0.4");
        assertThat(answer.body().lines().filter(line -> !line.startsWith("#"))).allMatch(line -> SAMPLE.matcher(line).matches());
        assertThat(answer.body().lines()).contains("cupbeam_events_kept_total 40.0", "cupbeam_events_missing_total 2.0",
                "cupbeam_messages_refused_total 5.0", "cupbeam_messages_let_go_total 6.0", "cupbeam_messages_waiting 7.0",
                "cupbeam_broker_reached 1.0", "cupbeam_keeps_events 0.0", "cupbeam_store_takes_events 1.0",
                "cupbeam_commit_seconds_bucket{le=\"0.001\"} 3",
                "cupbeam_commit_seconds_bucket{le=\"10.0\"} 3", "cupbeam_commit_seconds_bucket{le=\"+Inf\"} 4",
                "cupbeam_commit_seconds_count 4", "cupbeam_commit_seconds_sum 12.5", "cupbeam_lanes{state=\"online\"} 1.0",
                "cupbeam_lanes{state=\"lost\"} 1.0", "cupbeam_lane_faults{lane=\"lane-1\",studio=\"home\"} 0.0");
    }

    @Test
    void thereAreNoMoreSeriesThanLanesAllow() throws Exception {
        long before = samples().size();
        for (int i = 0; i < 2_500; i++) {
            lanes.health(new Topics("home", "made-up-" + i), Scenes.online(1, "j" + i));
        }
        assertThat(samples().size() - before).isEqualTo(3 * 2_046);
    }

    /** Each query of the dashboard asks for what there is, by labels that there are, and all that there is is on it. */
    @Test
    void theDashboardsQueriesAreOfTheseMetrics() throws Exception {
        Map<String, Set<String>> exposed = new TreeMap<>();
        for (String line : samples()) {
            MatchResult sample = SAMPLE.matcher(line).results().findFirst().orElseThrow();
            Set<String> labels = exposed.computeIfAbsent(sample.group(1), name -> new TreeSet<>(Set.of("instance", "job")));
            if (sample.group(2) != null) {
                Pattern.compile("([a-z_]+)=\"").matcher(sample.group(2)).results().forEach(each -> labels.add(each.group(1)));
            }
        }
        Set<String> asked = new TreeSet<>();
        for (JsonNode expr : new ObjectMapper().readTree(Path.of("../docs/grafana/cupbeam.json").toFile()).findValues("expr")) {
            List<String> names = OURS.matcher(expr.asText()).results().map(MatchResult::group).toList();
            assertThat(names).as(expr.asText()).isNotEmpty();
            assertThat(exposed.keySet()).as(expr.asText()).containsAll(names);
            Pattern.compile("by \\(([^)]*)\\)").matcher(expr.asText()).results().forEach(by ->
                    assertThat(exposed.get(names.get(0))).as(expr.asText()).contains(by.group(1).split(", ")));
            asked.addAll(names);
        }
        assertThat(asked).isEqualTo(exposed.keySet());
    }

    @Test
    void theAlarmsAreOfTheseMetricsAndByTheirLabels() throws Exception {
        List<String> exposed = samples();
        List<String> exprs = Files.readAllLines(Path.of("../docs/prometheus/cupbeam-rules.yml")).stream()
                .filter(line -> line.strip().startsWith("expr:")).toList();
        assertThat(exprs).hasSizeGreaterThan(4).allSatisfy(expr -> assertThat(OURS.matcher(expr).results().map(MatchResult::group))
                .isNotEmpty().allSatisfy(name -> assertThat(exposed).as(name).anyMatch(line -> line.startsWith(name))));
        assertThat(exprs.stream().filter(each -> each.contains("(studio, lane)"))).hasSize(2);
        assertThat(exposed).filteredOn(line -> line.startsWith("cupbeam_lane_")).allMatch(line -> line.contains("lane=") && line.contains("studio="));
    }

    private List<String> samples() throws Exception {
        return get("/metrics", "Bearer " + TOKEN).body().lines().filter(line -> !line.startsWith("#")).toList();
    }

    /** What is asked of its parts is at most a second old. */
    private void awaitReady(boolean ready) throws Exception {
        HttpResponse<String> answer = get("/ready", null);
        for (long endNs = System.nanoTime() + 20_000_000_000L; ready != (answer.statusCode() == 200)
                && System.nanoTime() < endNs; answer = get("/ready", null)) {
            Thread.sleep(100);
        }
        assertThat(answer.statusCode()).isEqualTo(ready ? 200 : 503);
        assertThat(answer.body()).isEqualTo(ready ? "ready\n" : "not ready\n");
    }

    private HttpResponse<String> get(String path, String authorization) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + web.port() + path));
        if (authorization != null) {
            request.header("Authorization", authorization);
        }
        return HttpClient.newHttpClient().send(request.build(), HttpResponse.BodyHandlers.ofString());
    }
}
