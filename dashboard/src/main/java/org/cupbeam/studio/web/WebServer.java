package org.cupbeam.studio.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.staticfiles.Location;
import jakarta.servlet.DispatcherType;
import jakarta.servlet.Filter;
import java.net.BindException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.BiPredicate;
import java.util.function.Supplier;
import org.cupbeam.event.Command;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.coach.Coach;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Vitals;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.staff.StaffBook;
import org.cupbeam.studio.web.access.Proxies;
import org.cupbeam.studio.web.access.Roster;
import org.cupbeam.studio.web.access.ScrapeToken;
import org.cupbeam.studio.web.access.Sessions;
import org.cupbeam.studio.web.access.Staff;
import org.cupbeam.studio.web.access.StaffPin;
import org.cupbeam.studio.web.access.Tries;
import org.eclipse.jetty.ee10.servlet.FilterHolder;
import org.eclipse.jetty.ee10.servlet.ServletContextHandler;
import org.eclipse.jetty.ee10.servlet.ServletHolder;
import org.eclipse.jetty.server.handler.ThreadLimitHandler;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The host's pages and streams over HTTP. */
public final class WebServer implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(WebServer.class);
    private static final int MOST_THREADS = 16;
    private static final int LEAST_THREADS = 4;
    /** Of one address: whoever does not read what is answered holds a thread, and must not hold them all. */
    private static final int MOST_THREADS_OF_ONE = 6;
    private static final int THREAD_IDLE_MS = 30_000;
    private static final long LOOK_EVERY_MS = 250;
    private static final long PULSE_EVERY_S = 10;
    private static final long LOOK_ELSEWHERE_EVERY_S = 15;
    private static final Duration PATIENCE = Duration.ofSeconds(3);

    private final LiveLanes lanes;
    private final BestToBeat best;
    private final Metrics metrics;
    private final Access access;
    private final Proxies proxies;
    private final Orders orders = new Orders(PATIENCE);
    private final Coach coach;
    private final InsightRoutes insight;
    private final List<Routes> subjects;
    private final Javalin javalin;
    private final ScheduledExecutorService clock = Executors.newScheduledThreadPool(1, task -> {
        Thread thread = new Thread(task, "web-clock");
        thread.setDaemon(true);
        return thread;
    });

    public WebServer(Store store, LiveLanes lanes, StaffPin pin) {
        this(store, lanes, pin, Clock.systemDefaultZone());
    }

    /** Without a proxy. @param wall the time of day for people, with the zone of this machine */
    public WebServer(Store store, LiveLanes lanes, StaffPin pin, Clock wall) {
        this(store, lanes, pin, wall, Proxies.NONE);
    }

    /**
     * @param wall    the time of day for people, with the zone of this machine
     * @param proxies that are believed
     */
    public WebServer(Store store, LiveLanes lanes, StaffPin pin, Clock wall, Proxies proxies) {
        this.lanes = lanes;
        this.proxies = proxies;
        InstantSource steady = () -> Instant.EPOCH.plusNanos(System.nanoTime()); // a wall clock may jump
        Sessions sessions = new Sessions(new SecureRandom(), steady);
        Staff people = new Staff(pin, new Roster(() -> store.read(StaffBook::all), System::nanoTime), pin.secrets());
        this.access = new Access(people, sessions);
        StaffRoutes staff = new StaffRoutes(store, people, sessions, wall);
        AccessRoutes signIn = new AccessRoutes(people, sessions, new Tries(steady), staff);
        staff.goOnBy(signIn::goOnAs);
        GreenWatch watch = new GreenWatch(store, wall);
        this.coach = new Coach(store, wall);
        this.insight = new InsightRoutes(store, wall, coach);
        this.metrics = new Metrics(lanes);
        this.subjects = List.of(
                new Failures(),
                new Guard(store),
                new OperatorRoutes(metrics, () -> lanes.hearsBroker() && answers(store), System::nanoTime),
                signIn,
                staff,
                new ControlRoutes(lanes, orders, store, wall),
                new DrillRoutes(store, wall),
                new HealthRoutes(lanes, watch, metrics::trouble),
                new GreenRoutes(lanes, store, wall, watch),
                new RollRoutes(lanes, store, wall),
                new PlacesRoutes(lanes),
                new CardRoutes(store, wall),
                new UsageRoutes(store, wall),
                new LeagueRoutes(store, lanes, wall),
                new LogbookPages(),
                new LogbookRoutes(store, wall),
                new RecordRoutes(store, wall),
                new ExchangeRoutes(store, wall),
                insight);
        lanes.answersTo(orders::answered);
        this.best = new BestToBeat(store, lanes, wall);
        this.javalin = Javalin.create(this::configure);
    }

    /**
     * Begins to answer.
     *
     * @param port 0 for any that is free
     * @throws BindException when something else has the port
     */
    public WebServer start(String host, int port) throws BindException {
        try {
            javalin.start(host, port);
        } catch (RuntimeException e) {
            for (Throwable cause = e; cause != null; cause = cause.getCause()) {
                if (cause instanceof BindException) {
                    throw (BindException) new BindException(host + ":" + port).initCause(e);
                }
            }
            throw e;
        }
        clock.scheduleWithFixedDelay(guarded(best::look), 0, LOOK_EVERY_MS, TimeUnit.MILLISECONDS);
        clock.scheduleWithFixedDelay(guarded(lanes::pulse), 0, PULSE_EVERY_S, TimeUnit.SECONDS);
        return this;
    }

    /** How commands get to the lanes: false where one cannot go out. */
    public void sendBy(BiPredicate<Topics, Command> how) {
        orders.sendBy(how);
    }

    /** How the ingest is asked how it is, and who may read that beside staff. */
    public void operatedBy(Supplier<Vitals> vitals, ScrapeToken token) {
        metrics.ask(vitals);
        access.letScrape(token);
    }

    /** The port that it listens on. */
    public int port() {
        return javalin.port();
    }

    /** Every address that something answers at, what varies in braces: for whoever sees to it that none stands open. */
    List<String> paths() {
        return javalin.unsafe.internalRouter.allHttpHandlers().stream().map(each -> each.endpoint.path).filter(each -> !each.equals("*"))
                .distinct().toList(); // the guard comes before all
    }

    /** Every address that is answered, as its route has it: {@code /api/run/{id}}. The streams are not among them. */
    List<String> addresses(String method) {
        return javalin.unsafe.internalRouter.allHttpHandlers().stream().map(each -> each.endpoint)
                .filter(each -> each.method.name().equals(method)).map(each -> each.path).toList();
    }

    /** Has what takes long the first time run once beforehand, beside everything else. */
    public void warmUp() {
        coach.warmUp(insight::usual);
    }

    /** Other hosts may keep events and not say so: looks now and then whether something has changed. */
    public void othersKeepToo() {
        clock.scheduleWithFixedDelay(guarded(best::mayBeOther), LOOK_ELSEWHERE_EVERY_S, LOOK_ELSEWHERE_EVERY_S, TimeUnit.SECONDS);
    }

    /** Events were kept; what pages show may have changed. */
    public void kept(List<Arrival> arrivals) {
        best.kept(arrivals);
    }

    @Override
    public void close() {
        clock.shutdownNow();
        lanes.end();
        javalin.stop();
        coach.close();
    }

    private void configure(JavalinConfig config) {
        config.startup.showJavalinBanner = false;
        config.startup.startupWatcherEnabled = false;
        config.jetty.threadPool = new QueuedThreadPool(MOST_THREADS, LEAST_THREADS, THREAD_IDLE_MS);
        config.jetty.modifyServletContextHandler(this::servlets);
        config.jetty.modifyServer(server -> {
            server.setStopTimeout(0);
            ThreadLimitHandler fair = new ThreadLimitHandler();
            fair.setThreadLimit(MOST_THREADS_OF_ONE);
            server.setHandler(fair);
        });
        config.staticFiles.add(files -> {
            files.hostedPath = "/";
            files.directory = "/web";
            files.location = Location.CLASSPATH;
            files.headers = Map.of("Cache-Control", "no-cache");
        });
        config.routes.get("/", this::home);
        config.routes.get("/lanes", Page.of("lanes.html"));
        config.routes.get("/board/{studio}/{lane}", Page.of("board.html"));
        subjects.forEach(each -> each.addTo(config.routes));
    }

    private void servlets(ServletContextHandler context) {
        filter(context, new PassedOn(proxies), EnumSet.of(DispatcherType.REQUEST, DispatcherType.ERROR));
        filter(context, new Headers(), EnumSet.of(DispatcherType.REQUEST, DispatcherType.ERROR));
        filter(context, access, EnumSet.of(DispatcherType.REQUEST));
        ServletHolder live = new ServletHolder(new LiveServlet(lanes));
        live.setAsyncSupported(true);
        context.addServlet(live, "/live/*");
    }

    private static void filter(ServletContextHandler context, Filter filter, EnumSet<DispatcherType> when) {
        FilterHolder holder = new FilterHolder(filter);
        holder.setAsyncSupported(true);
        context.addFilter(holder, "/*", when);
    }

    /** The only lane's board where there is one lane; else the list. */
    private void home(Context ctx) {
        List<LiveLane> heard = lanes.heard(Access.openScope(ctx.req()));
        if (heard.size() == 1) {
            ctx.redirect("/board/" + heard.get(0).topics().studio() + "/" + heard.get(0).topics().lane());
        } else {
            ctx.redirect("/lanes");
        }
    }

    private static boolean answers(Store store) {
        try {
            return store.read(handle -> handle.createQuery("SELECT 1").mapTo(int.class).one()) == 1;
        } catch (RuntimeException e) {
            LOG.debug("the store cannot be read", e);
            return false;
        }
    }

    private static Runnable guarded(Runnable task) {
        return () -> {
            try {
                task.run();
            } catch (RuntimeException e) {
                LOG.warn("trying again later: {}", e.toString());
            }
        };
    }
}
