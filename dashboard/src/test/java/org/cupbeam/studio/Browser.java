package org.cupbeam.studio;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/** A headless Chromium with one page, told what to do over its DevTools protocol. */
public final class Browser implements AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int LIMIT_S = 20;

    private final Process process;
    private final Path profile;
    private final WebSocket socket;
    private final AtomicInteger sent = new AtomicInteger();
    private final Map<Integer, CompletableFuture<JsonNode>> waiting = new ConcurrentHashMap<>();
    private final StringBuilder complaints = new StringBuilder();
    private String session = "";

    public Browser() throws IOException, InterruptedException {
        profile = Files.createTempDirectory("cupbeam-browser");
        process = new ProcessBuilder(Tools.path("chromium").toString(), "--headless", "--no-sandbox", "--disable-gpu",
                "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update",
                "--disable-sync", "--hide-scrollbars", "--remote-debugging-port=0", "--user-data-dir=" + profile,
                "about:blank").redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        String[] port = portFile();
        socket = HttpClient.newHttpClient().newWebSocketBuilder().buildAsync(
                URI.create("ws://127.0.0.1:" + port[0] + port[1]), new Listener()).join();
        String target = call("Target.createTarget", Map.of("url", "about:blank")).get("targetId").asText();
        session = call("Target.attachToTarget", Map.of("targetId", target, "flatten", true)).get("sessionId").asText();
        call("Page.enable", Map.of());
        call("Runtime.enable", Map.of());
        call("Log.enable", Map.of());
    }

    public Browser size(int width, int height) {
        call("Emulation.setDeviceMetricsOverride", Map.of("width", width, "height", height, "deviceScaleFactor", 1,
                "mobile", width < 600));
        return this;
    }

    /** For whoever asked their system for less motion; pictures are then not taken in mid-movement. */
    public Browser calm() {
        call("Emulation.setEmulatedMedia", Map.of("features",
                List.of(Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
        return this;
    }

    public Browser open(String url) {
        call("Page.navigate", Map.of("url", "about:blank"));
        synchronized (complaints) {
            complaints.setLength(0);
        }
        call("Page.navigate", Map.of("url", url));
        await("document.readyState === 'complete' && location.href !== 'about:blank'");
        return this;
    }

    /** The value of an expression. */
    public JsonNode value(String expression) {
        JsonNode answer = call("Runtime.evaluate", Map.of("expression", expression, "returnByValue", true,
                "awaitPromise", true));
        if (answer.has("exceptionDetails")) {
            throw new AssertionError(expression + ": " + answer.get("exceptionDetails"));
        }
        return answer.get("result").path("value");
    }

    /** What a reader sees in an element. */
    public String text(String selector) {
        return value(shown(selector)).asText();
    }

    public Browser await(String condition) {
        return await(condition, LIMIT_S);
    }

    /** Waits until a condition of the page holds, for so long at most. */
    public Browser await(String condition, int limitS) {
        long untilNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(limitS);
        while (!value("!!(" + condition + ")").asBoolean()) {
            if (System.nanoTime() > untilNs) {
                throw new AssertionError("never came true: " + condition + "; the page says: "
                        + value("document.body.innerText").asText() + "; complaints: " + complaints());
            }
            pause();
        }
        return this;
    }

    public Browser awaitText(String selector, String text) {
        return await(shown(selector) + ".includes(" + JSON.valueToTree(text) + ")");
    }

    private static String shown(String selector) {
        return "(e => e?.innerText ?? e?.textContent ?? '')(document.querySelector('" + selector + "'))"
                + ".replaceAll('\\u00a0', ' ')";
    }

    /** Clicks what can be clicked: a button that waits for an answer is waited for. */
    public void click(String selector) {
        String element = "document.querySelector('" + selector + "')";
        await("(e => e && !e.disabled)(" + element + ")");
        value(element + ".click()");
    }

    /** Presses and releases a key, as {@code Tab} or {@code Enter}. */
    public void press(String key) {
        Map<String, Integer> codes = Map.of("Tab", 9, "Enter", 13, "Escape", 27, " ", 32, "ArrowLeft", 37, "ArrowUp", 38,
                "ArrowRight", 39, "ArrowDown", 40);
        for (String type : new String[] {"keyDown", "keyUp"}) {
            call("Input.dispatchKeyEvent", Map.of("type", type, "key", key, "code",
                    key.equals(" ") ? "Space" : key,
                    "windowsVirtualKeyCode", codes.getOrDefault(key, 0), "text",
                    key.equals("Enter") ? "\r" : key.equals(" ") ? " " : ""));
        }
    }

    public void screenshot(Path file) throws IOException {
        Files.createDirectories(file.toAbsolutePath().getParent());
        String png = call("Page.captureScreenshot", Map.of("format", "png")).get("data").asText();
        Files.write(file, Base64.getDecoder().decode(png));
    }

    /** What the page complained of: errors, exceptions, refusals of the policy. */
    public String complaints() {
        synchronized (complaints) {
            return complaints.toString();
        }
    }

    /** Calls a method of the protocol. */
    public JsonNode call(String method, Map<String, Object> parameters) {
        int id = sent.incrementAndGet();
        ObjectNode message = JSON.createObjectNode().put("id", id).put("method", method);
        message.set("params", JSON.valueToTree(parameters));
        if (!session.isEmpty()) {
            message.put("sessionId", session);
        }
        CompletableFuture<JsonNode> answer = new CompletableFuture<>();
        waiting.put(id, answer);
        socket.sendText(message.toString(), true).join();
        try {
            return answer.get(LIMIT_S, TimeUnit.SECONDS);
        } catch (InterruptedException | ExecutionException | TimeoutException e) {
            throw new AssertionError(method + ": " + e, e);
        }
    }

    @Override
    public void close() throws IOException {
        socket.abort();
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
        try {
            process.waitFor(5, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        try (Stream<Path> files = Files.walk(profile)) {
            files.sorted((a, b) -> b.getNameCount() - a.getNameCount()).forEach(file -> file.toFile().delete());
        } catch (java.io.UncheckedIOException e) {
            profile.toFile().deleteOnExit(); // it was still tidying up itself
        }
    }

    private String[] portFile() throws IOException, InterruptedException {
        Path file = profile.resolve("DevToolsActivePort");
        for (int tries = 0; tries < LIMIT_S * 20; tries++) {
            if (Files.exists(file) && Files.readAllLines(file).size() >= 2) {
                return Files.readAllLines(file).toArray(String[]::new);
            }
            TimeUnit.MILLISECONDS.sleep(50);
        }
        process.destroyForcibly();
        throw new IOException("chromium did not open its debugging port");
    }

    private static void pause() {
        try {
            TimeUnit.MILLISECONDS.sleep(20);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private final class Listener implements WebSocket.Listener {
        private final StringBuilder text = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
            text.append(data);
            if (last) {
                take(text.toString());
                text.setLength(0);
            }
            from.request(1);
            return null;
        }

        private void take(String message) {
            try {
                JsonNode json = JSON.readTree(message);
                CompletableFuture<JsonNode> answer = waiting.remove(json.path("id").asInt());
                if (answer != null) {
                    answer.complete(json.has("error") ? json : json.path("result"));
                }
                String method = json.path("method").asText();
                boolean error = "error".equals(json.at("/params/entry/level").asText());
                if (method.equals("Runtime.exceptionThrown") || method.equals("Log.entryAdded") && error) {
                    synchronized (complaints) {
                        complaints.append(message).append('\n');
                    }
                }
            } catch (IOException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}
