package org.cupbeam.studio.bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.Mosquitto;
import org.cupbeam.studio.PostgresServer;
import org.cupbeam.studio.seed.Scenario;
import org.cupbeam.studio.store.BestRun;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.PageQuestions;
import org.cupbeam.studio.web.PageQuestions.Question;
import org.opentest4j.TestAbortedException;

/**
 * How long a host takes to answer whatever its pages ask, with a made-up year of a million attempts stored, on SQLite and on
 * PostgreSQL: the packaged host in a process of its own, asked over HTTP, one question at a time, another one each time. It
 * prints the table of docs/performance.md; what is in brackets has a bar of its own.
 *
 * <p>Arguments: attempts; how often each kind is asked; {@code both}, {@code sqlite}, {@code postgres}, or the JDBC URL of a
 * store, filled where it is empty and left there; a file that a line for each kind is added to, or {@code none}.
 */
public final class QueriesBench {
    private static final double BAR_MS = 100;
    private static final int WARM_UP = 30;
    private static final int WORKED_OUT_TIMES = 60;
    /** A larger store's files take long, and no longer for each attempt. */
    private static final long MOST_EXPORTED = 2_000_000;
    private static final Pattern COLLECTED = Pattern.compile("(\\d+)M->(\\d+)M\\((\\d+)M\\)");

    private final int times;
    private final String csvOrNone;
    private final List<String> slowest = new ArrayList<>();
    private String measured;
    private int missed;

    private QueriesBench(int times, String csvOrNone) {
        this.times = times;
        this.csvOrNone = csvOrNone;
    }

    public static void main(String[] args) throws Exception {
        int attempts = Integer.parseInt(args[0]);
        QueriesBench bench = new QueriesBench(Integer.parseInt(args[1]), args[3]);
        Path folder = Files.createTempDirectory("queries-bench");
        try {
            if (args[2].startsWith("jdbc:")) {
                bench.engine(Database.at(args[2]), attempts, folder);
            }
            if (args[2].equals("both") || args[2].equals("sqlite")) {
                bench.engine(Database.file(folder.resolve("studio.db")), attempts, folder);
            }
            if (args[2].equals("both") || args[2].equals("postgres")) {
                bench.engine(Database.at(PostgresServer.emptyDatabase()), attempts, folder);
            }
        } catch (TestAbortedException e) {
            say("left out: %s", e.getMessage());
        } finally {
            delete(folder);
        }
        say("%d kinds of asking missed the bar of %.0f ms", bench.missed, BAR_MS);
        System.exit(0);
    }

    private void engine(Database database, int attempts, Path folder) throws Exception {
        String engine = database instanceof Database.Sqlite ? "SQLite" : "PostgreSQL";
        AskedStore store = AskedStore.open(database, attempts);
        say("%n%s: %,d attempts of %,d events, each kind asked %d times, load %.1f", engine, store.attempts(), store.events(),
                times, load());
        measured = String.format(Locale.ROOT, "%s,%s,%d,%d,%.1f", LocalDate.now(), engine, store.attempts(), times, load());
        Path log = folder.resolve(engine + "-gc");
        long began = System.nanoTime();
        try (Mosquitto broker = new Mosquitto(0)) {
            LanesHeard.at(broker.uri(), store);
            began = System.nanoTime();
            try (HostProcess host = new HostProcess(folder.resolve(engine), broker.uri(), List.of("-Xlog:gc:file=" + log),
                    List.of("--store", database.url()))) {
                say("from its start until the host answers: %.1f s", (System.nanoTime() - began) / 1e9);
                Asker asker = new Asker(host.port, watched(host, database));
                ask(asker, store);
                say("the host: resident %.0f MB, peak %.0f MB", host.residentMb("VmRSS"), host.residentMb("VmHWM"));
                bestToBeat(database);
                if (store.attempts() <= MOST_EXPORTED) {
                    export(asker, host, log, "/api/runs/export?as=csv&sheet=attempts");
                    export(asker, host, log, "/api/record/export?as=json");
                }
            }
        }
    }

    private void ask(Asker asker, AskedStore store) throws IOException {
        for (Question each : PageQuestions.STORED) {
            warmUp(asker, () -> each.path().apply(store.found()), each.firstByte());
        }
        say("%n| ms | first | p50 | p99 | worst | processor time |%n| --- | --- | --- | --- | --- | --- |");
        for (Question each : PageQuestions.STORED) {
            ask(asker, each.what() + (each.firstByte() ? ", first byte" : ""), () -> each.path().apply(store.found()), each.firstByte(), times);
        }
        ask(asker, "the pages themselves", () -> PageQuestions.page(store.found().lanes().isEmpty() ? "/lanes"
                : PageQuestions.PAGES.get(store.found().random().nextInt(PageQuestions.PAGES.size())), store.found()), false, times);
        for (Question each : PageQuestions.WORKED_OUT) {
            ask(asker, "(" + each.what() + ")", () -> each.path().apply(store.found()), false, WORKED_OUT_TIMES);
        }
        say("%nload %.1f afterwards; slowest of those over the bar: %s", load(), slowest);
    }

    /** What isn't answered is said when it is measured. */
    private static void warmUp(Asker asker, Supplier<String> path, boolean firstByte) {
        try {
            asker.ask(path, firstByte, WARM_UP);
        } catch (Asker.NotAnswered e) {
            say("%s, while warming up", e.getMessage());
        }
    }

    /** What isn't answered misses the bar, and the others are asked all the same. */
    private void ask(Asker asker, String what, Supplier<String> path, boolean firstByte, int asked) throws IOException {
        try {
            tell(what, asker.ask(path, firstByte, asked));
        } catch (Asker.NotAnswered e) {
            missed++;
            say("| %s | | | **%s** | | |", what, e.getMessage());
            slowest.add(e.getMessage());
        }
    }

    private void tell(String what, Asker.Times took) throws IOException {
        if (!csvOrNone.equals("none")) {
            Files.writeString(Path.of(csvOrNone), String.format(Locale.ROOT, "%s,\"%s\",%.1f,%.1f,%.1f,%.1f,%.1f%n", measured, what,
                    took.first(), took.p50(), took.p99(), took.worst(), took.cpu()), StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        }
        boolean over = took.p99() > BAR_MS;
        missed += over && !what.startsWith("(") ? 1 : 0;
        say("| %s | %.1f | %.1f | %s%.1f%s | %.1f | %.1f |", what, took.first(), took.p50(), over ? "**" : "", took.p99(),
                over ? "**" : "", took.worst(), took.cpu());
        if (over) {
            slowest.add(took.worstPath());
        }
    }

    /** What a board shows beside the score is asked for by the host itself, when a run has ended. */
    private static void bestToBeat(Database database) throws BadMessage {
        try (Store store = Store.open(database)) {
            List<Drill> drills = new ArrayList<>();
            for (String terms : store.read(h -> h.createQuery("SELECT terms FROM drill").mapTo(String.class).list())) {
                drills.add(DrillJson.read(terms));
            }
            for (int round = 0; round < 2; round++) {
                double worst = 0;
                for (Drill drill : drills) {
                    for (Tags.Break turning : Tags.Break.values()) {
                        for (Tags.Slope lying : Tags.Slope.values()) {
                            long start = System.nanoTime();
                            store.read(h -> BestRun.of(h, Scenario.STUDIO, drill, new Tags(turning, lying)));
                            worst = Math.max(worst, (System.nanoTime() - start) / 1e6);
                        }
                    }
                }
                say("the best run to beat, of each of %d drills and its tags: worst %.1f ms", drills.size(), worst);
            }
        }
    }

    private static void export(Asker asker, HostProcess host, Path log, String path) throws Exception {
        long before = Files.size(log);
        double cpu = ProcessorTime.ms(host.handle());
        long start = System.nanoTime();
        long[] lines = new long[1];
        double bytes = asker.take(path, in -> drain(in, lines));
        double tookS = (System.nanoTime() - start) / 1e9;
        int most = 0;
        int room = 0;
        for (Matcher found = COLLECTED.matcher(Files.readString(log).substring((int) before)); found.find(); ) {
            most = Math.max(most, Integer.parseInt(found.group(2)));
            room = Math.max(room, Integer.parseInt(found.group(3)));
        }
        say("%s: %,d lines, %.0f MB in %.0f s (%.0f s of processor time), at most %d MB of heap left after a collection (heap %d "
                + "MB), resident peak %.0f MB", path, lines[0], bytes / 1e6, tookS, (ProcessorTime.ms(host.handle())
                - cpu) / 1e3, most, room, host.residentMb("VmHWM"));
    }

    private static double drain(InputStream in, long[] lines) {
        byte[] some = new byte[1 << 16];
        double bytes = 0;
        try {
            for (int n = in.read(some); n >= 0; n = in.read(some)) {
                bytes += n;
                for (int i = 0; i < n; i++) {
                    lines[0] += some[i] == '\n' ? 1 : 0;
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes;
    }

    /** The host, and the server that its store is in. */
    private static List<ProcessHandle> watched(HostProcess host, Database database) {
        List<ProcessHandle> all = new ArrayList<>(List.of(host.handle()));
        if (database instanceof Database.Postgres) {
            try (var connection = database.reader(); var statement = connection.createStatement();
                 var row = statement.executeQuery("SELECT pg_backend_pid()")) {
                row.next();
                all.add(ProcessHandle.of(row.getLong(1)).flatMap(ProcessHandle::parent).orElseThrow());
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
        }
        return all;
    }

    private static double load() {
        return ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    }

    private static void say(String format, Object... values) {
        System.out.printf(Locale.ROOT, format + "%n", values);
    }

    private static void delete(Path folder) throws IOException {
        try (var files = Files.walk(folder)) {
            for (Path each : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }
}
