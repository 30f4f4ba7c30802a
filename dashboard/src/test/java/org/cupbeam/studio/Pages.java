package org.cupbeam.studio;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.Vitals;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.LiveLanes;
import org.cupbeam.studio.web.WebServer;
import org.cupbeam.studio.web.access.StaffPin;

/** The pages of a store of their own, without a broker, and somebody at this machine who asks for them. */
public final class Pages implements AutoCloseable {
    public static final Clock NOW = Clock.fixed(Instant.parse("2026-11-25T21:00:00Z"), ZoneId.of("Europe/Berlin"));
    private static final ObjectMapper JSON = new ObjectMapper();

    public final Store store;
    public final LiveLanes lanes = new LiveLanes("test");
    private final Keeper keeper;
    private final WebServer web;
    private final HttpClient client = HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
    private String token;

    /** It is 25 November 2026, ten in the evening in Berlin. */
    public Pages(Path folder) throws IOException {
        store = Store.open(Database.file(folder.resolve("studio.db")));
        keeper = new Keeper(store);
        lanes.askBroker(() -> true);
        web = new WebServer(store, lanes, new StaffPin(folder.resolve("staff-pin")), NOW)
                .start("127.0.0.1", 0);
    }

    /** Events come in and are kept. */
    public void keep(Event... events) {
        keeper.commit(new Batch(Arrays.stream(events).map(each -> new Arrival(each.source(), each.sequence(), each.time(),
                each, null, ScriptedLane.json(each), NOW.instant())).toList(), List.of(), List.of()));
    }

    /** Nothing can be kept at present. */
    public void storeSays(String trouble) {
        web.operatedBy(() -> new Vitals(true, true, trouble, 0, 0, 0, 0, 0, new long[Vitals.limitsS().length + 1], 0), null);
    }

    public String url(String path) {
        return "http://127.0.0.1:" + web.port() + path;
    }

    /** What a path gives, which has to be there. */
    public JsonNode get(String path) {
        HttpResponse<byte[]> answer = ask("GET", path, null);
        if (answer.statusCode() != 200) {
            throw new AssertionError(path + ": " + answer.statusCode() + " " + text(answer));
        }
        return json(answer);
    }

    /** Changes something, which has to be taken. */
    public JsonNode done(String method, String path, String body) {
        HttpResponse<byte[]> answer = ask(method, path, body);
        if (answer.statusCode() != 200) {
            throw new AssertionError(method + " " + path + ": " + answer.statusCode() + " " + text(answer));
        }
        return json(answer);
    }

    /** Players who have not played yet: the name with a number from 001 on. */
    public void enrol(String name, int players) {
        for (int each = 1; each <= players; each++) {
            done("POST", "/api/players", "{\"name\": \"%s %03d\"}".formatted(name, each));
        }
    }

    /** Asks, as a page of staff's does. @param body JSON; null for none */
    public HttpResponse<byte[]> ask(String method, String path, String body) {
        return ask(method, path, "application/json", body);
    }

    public HttpResponse<byte[]> ask(String method, String path, String type, String body) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(url(path)));
        if (!method.equals("GET")) {
            request.header("X-Cupbeam-Token", token());
        }
        if (body != null) {
            request.header("Content-Type", type);
        }
        return send(request.method(method, body == null ? HttpRequest.BodyPublishers.noBody()
                : HttpRequest.BodyPublishers.ofString(body)).build());
    }

    public static JsonNode json(HttpResponse<byte[]> answer) {
        try {
            return JSON.readTree(answer.body());
        } catch (IOException e) {
            throw new AssertionError("no JSON: " + text(answer), e);
        }
    }

    public static String text(HttpResponse<byte[]> answer) {
        return new String(answer.body(), StandardCharsets.UTF_8);
    }

    private String token() {
        if (token == null) {
            token = get("/api/session").get("token").asText();
        }
        return token;
    }

    private HttpResponse<byte[]> send(HttpRequest request) {
        try {
            return client.send(request, HttpResponse.BodyHandlers.ofByteArray());
        } catch (IOException e) {
            throw new AssertionError(request + ": " + e, e);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public void close() {
        web.close();
        store.close();
    }
}
