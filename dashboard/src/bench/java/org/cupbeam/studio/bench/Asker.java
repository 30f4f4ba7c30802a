package org.cupbeam.studio.bench;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;

/** Asks a host over HTTP, one question after the other, and says how long the answers took to be there whole. */
final class Asker {
    /**
     * What came of asking, in ms.
     *
     * @param cpu of the host and its database, on average
     */
    record Times(double first, double p50, double p99, double worst, double cpu, String worstPath) {
    }

    /** An answer that says that there is none. */
    static final class NotAnswered extends RuntimeException {
        private NotAnswered(String message) {
            super(message);
        }
    }

    private static final int PAUSE_AFTER_FILE_MS = 30;

    private final HttpClient client = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private final String base;
    private final List<ProcessHandle> processes;

    /** @param processes of the host and its database */
    Asker(int port, List<ProcessHandle> processes) {
        base = "http://localhost:" + port;
        this.processes = processes;
    }

    /** Asks so many times, each for another path. */
    Times ask(Supplier<String> path, boolean firstByte, int times) {
        double[] ms = new double[times];
        double worst = 0;
        String worstPath = "";
        double first = ask(path.get(), firstByte);
        double before = cpuMs();
        for (int i = 0; i < times; i++) {
            String asked = path.get();
            ms[i] = ask(asked, firstByte);
            worstPath = ms[i] > worst ? asked : worstPath;
            worst = Math.max(worst, ms[i]);
        }
        double cpu = (cpuMs() - before) / times;
        Arrays.sort(ms);
        return new Times(first, ms[times / 2], ms[(int) Math.ceil(0.99 * times) - 1], worst, cpu, worstPath);
    }

    /** Takes a whole file, and hands it on as it comes. */
    double take(String path, ToDoubleFunction<InputStream> reader) throws IOException, InterruptedException {
        try (InputStream in = client.send(request(path), BodyHandlers.ofInputStream()).body()) {
            return reader.applyAsDouble(in);
        }
    }

    private double cpuMs() {
        return processes.stream().mapToDouble(ProcessorTime::ms).sum();
    }

    private double ask(String path, boolean firstByte) {
        try {
            return firstByte ? beginning(path) : whole(path);
        } catch (IOException e) {
            throw new IllegalStateException(path, e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private double whole(String path) throws IOException, InterruptedException {
        long start = System.nanoTime();
        HttpResponse<byte[]> answer = client.send(request(path), BodyHandlers.ofByteArray());
        double ms = (System.nanoTime() - start) / 1e6;
        expect(answer, path);
        return ms;
    }

    /** Until the first byte; then the host has a moment to see that nobody waits for the rest. */
    private double beginning(String path) throws IOException, InterruptedException {
        long start = System.nanoTime();
        HttpResponse<InputStream> answer = client.send(request(path), BodyHandlers.ofInputStream());
        double ms;
        try (InputStream in = answer.body()) {
            in.read();
            ms = (System.nanoTime() - start) / 1e6;
        }
        expect(answer, path);
        TimeUnit.MILLISECONDS.sleep(PAUSE_AFTER_FILE_MS);
        return ms;
    }

    private static void expect(HttpResponse<?> answer, String path) {
        if (answer.statusCode() != 200 && answer.statusCode() != 302) {
            throw new NotAnswered(String.format(Locale.ROOT, "%s: status %d", path, answer.statusCode()));
        }
    }

    private HttpRequest request(String path) {
        return HttpRequest.newBuilder(URI.create(base + path)).build();
    }
}
