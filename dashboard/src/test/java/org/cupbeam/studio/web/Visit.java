package org.cupbeam.studio.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.Map;
import java.util.stream.Stream;

/** A browser's part in HTTP, with a cookie jar of one cookie. */
public final class Visit {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final HttpClient CLIENT =
            HttpClient.newBuilder().followRedirects(HttpClient.Redirect.NEVER).build();

    private final String base;
    private String cookie;
    private String token;

    public Visit(int port) {
        base = "http://localhost:" + port;
    }

    public int port() {
        return URI.create(base).getPort();
    }

    public HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send(request(path).GET());
    }

    /** Changes something, as a page of the host does. */
    public HttpResponse<String> send(String method, String path, Object body) throws IOException, InterruptedException {
        HttpRequest.Builder request = request(path).method(method, body == null ? BodyPublishers.noBody()
                : BodyPublishers.ofString(JSON.writeValueAsString(body)));
        if (body != null) {
            request.header("Content-Type", "application/json");
        }
        if (token != null) {
            request.header(Access.TOKEN_HEADER, token);
        }
        return send(request);
    }

    /** What an event stream says under that word first. */
    String firstOf(String path, String event) throws IOException, InterruptedException {
        HttpResponse<Stream<String>> answer = CLIENT.send(request(path).GET().build(), BodyHandlers.ofLines());
        try (Stream<String> lines = answer.body()) {
            return lines.dropWhile(line -> !line.equals(event)).skip(1).filter(line -> line.startsWith("data")).findFirst().orElseThrow();
        }
    }

    HttpRequest.Builder request(String path) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(base + path));
        return cookie == null ? request : request.header("Cookie", "cupbeam-staff=" + cookie);
    }

    HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        HttpResponse<String> answer = CLIENT.send(request.build(), BodyHandlers.ofString());
        answer.headers().firstValue("Set-Cookie").ifPresent(set -> cookie = set.split("[=;]")[1]);
        return answer;
    }

    public Visit signIn(String pin, String who) throws IOException, InterruptedException {
        HttpResponse<String> answer = send("POST", "/api/session", Map.of("pin", pin, "who", who));
        if (answer.statusCode() != 200) {
            throw new AssertionError("not signed in: " + answer.statusCode() + " " + answer.body());
        }
        token = json(answer).get("token").asText();
        return this;
    }

    /** Signs in by a name of one's own. */
    public Visit signInAs(String name, String secret) throws IOException, InterruptedException {
        HttpResponse<String> answer = send("POST", "/api/session", Map.of("name", name, "secret", secret));
        if (answer.statusCode() != 200) {
            throw new AssertionError("not signed in: " + answer.statusCode() + " " + answer.body());
        }
        token = json(answer).get("token").asText();
        return this;
    }

    /** Asks how it stands, which gives whoever sits here a token while there is no PIN. */
    public Visit arrives() throws IOException, InterruptedException {
        JsonNode standing = json(get("/api/session"));
        token = standing.get("token").isNull() ? null : standing.get("token").asText();
        return this;
    }

    Visit withCookie(String value) {
        cookie = value;
        return this;
    }

    Visit withToken(String value) {
        token = value;
        return this;
    }

    String cookie() {
        return cookie;
    }

    String token() {
        return token;
    }

    public static JsonNode json(HttpResponse<String> answer) {
        try {
            return JSON.readTree(answer.body());
        } catch (IOException e) {
            throw new AssertionError("no JSON: " + answer.body(), e);
        }
    }
}
