package org.cupbeam.studio.web;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.regex.Pattern;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.web.access.Person;
import org.cupbeam.studio.web.access.Right;
import org.cupbeam.studio.web.access.ScrapeToken;
import org.cupbeam.studio.web.access.Sessions;
import org.cupbeam.studio.web.access.Sessions.Session;
import org.cupbeam.studio.web.access.Staff;
import org.jdbi.v3.core.Handle;

/**
 * Lets through what anybody may see, and of everything else only what staff ask for. What is not named here as open is
 * closed. Whatever changes something must come from a page of ours (it knows the session's token, and the browser
 * says where it comes from), whoever asks.
 *
 * <p>While no PIN is set, whoever sits at this machine is staff.
 */
final class Access implements Filter {
    static final String TOKEN_HEADER = "X-Cupbeam-Token";
    private static final Pattern OPEN = Pattern.compile("/|/alive|/ready|/lanes|/board/[^/]+/[^/]+|/live/.+|/sign-in|/api/session"
            + "|/icon\\.svg|/(css|js|fonts)/[A-Za-z0-9.-]+");
    private static final Set<String> LOOKING = Set.of("GET", "HEAD");
    private static final Set<String> CHANGING = Set.of("POST", "PUT", "DELETE");
    private static final Pattern CROOKED = Pattern.compile("//|/\\.\\.?(/|$)|[;\\\\]|%(2[eEfF]|5[cC]|00|25|3[bB])");
    private static final String SESSION = "cupbeam.session";
    private static final Scope NOBODYS = Scope.of(Set.of());
    private static final String PERSON = "cupbeam.person";
    private static final String SCRAPES = "cupbeam.scrapes";

    private static final int SIGN_IN_AT_ONCE = 4;

    private final Staff people;
    private final Sessions sessions;
    private volatile ScrapeToken scraper = ScrapeToken.NONE;
    private final Semaphore signingIn = new Semaphore(SIGN_IN_AT_ONCE);

    Access(Staff people, Sessions sessions) {
        this.people = people;
        this.sessions = sessions;
    }

    @Override
    public void doFilter(ServletRequest anyRequest, ServletResponse anyResponse, FilterChain next)
            throws IOException, ServletException {
        HttpServletRequest request = (HttpServletRequest) anyRequest;
        HttpServletResponse response = (HttpServletResponse) anyResponse;
        boolean changes = CHANGING.contains(request.getMethod());
        Optional<Session> session = sessions.find(Cookies.session(request), people::goesOn);
        Optional<Person> person = session.flatMap(people::person);
        boolean staff = people.isGuarded() ? person.isPresent() : Caller.sitsHere(request);
        boolean signsIn = request.getMethod().equals("POST") && request.getRequestURI().equals("/api/session");
        if (CROOKED.matcher(request.getRequestURI()).find()) {
            refuse(response, 400, "That address is not written as addresses here are.");
        } else if (!changes && !LOOKING.contains(request.getMethod())) {
            refuse(response, 405, "Nothing here answers to " + request.getMethod() + ".");
        } else if (!staff && !changes && hasToken(request)) {
            request.setAttribute(SCRAPES, true);
            next.doFilter(request, response);
        } else if (!staff && !signsIn && (changes || !OPEN.matcher(request.getRequestURI()).matches())) {
            closed(request, response);
        } else if (changes && !Caller.isOurPage(request)) {
            refuse(response, 403, "That was not asked for by a page of this studio.");
        } else if (changes && !signsIn && !knowsToken(request, session)) {
            refuse(response, 412, "This page is from before the last sign-in. Load it again.");
        } else if (changes && !Caller.sendsData(request)) {
            refuse(response, 415, "What is sent here has to be application/json, or text/csv.");
        } else if (signsIn && !staff) {
            signIn(request, response, next);
        } else {
            if (staff) {
                session.ifPresent(each -> request.setAttribute(SESSION, each));
                request.setAttribute(PERSON, person.orElse(Person.HERE));
            }
            next.doFilter(request, response);
        }
    }

    /** Who may have the metrics beside staff. */
    void letScrape(ScrapeToken token) {
        scraper = token;
    }

    private boolean hasToken(HttpServletRequest request) {
        return request.getRequestURI().equals("/metrics") && scraper.isIn(request.getHeader("Authorization"));
    }

    /** Of all requests of strangers only this is read to its end, however slowly it comes: so by a few threads alone. */
    private void signIn(HttpServletRequest request, HttpServletResponse response, FilterChain next)
            throws IOException, ServletException {
        if (!signingIn.tryAcquire()) {
            refuse(response, 429, "Too many sign in at once. Try again in a moment.");
            return;
        }
        try {
            next.doFilter(request, response);
        } finally {
            signingIn.release();
        }
    }

    /** The session that a request belongs to; none before signing in. */
    static Optional<Session> session(HttpServletRequest request) {
        return Optional.ofNullable((Session) request.getAttribute(SESSION));
    }

    /** Who of the staff asks; empty for anybody else. */
    static Optional<Person> person(HttpServletRequest request) {
        return Optional.ofNullable((Person) request.getAttribute(PERSON));
    }

    /** Whether whoever asks has a right. */
    static boolean may(HttpServletRequest request, Right right) {
        return person(request).filter(each -> each.may(right)).isPresent();
    }

    /** The studios that whoever asks looks after; none for whoever is not of the staff. */
    static Scope scope(HttpServletRequest request) {
        return person(request).map(Person::scope).orElse(NOBODYS);
    }

    /** The same for what anybody may see: all, but for whoever of the staff looks after some. */
    static Scope openScope(HttpServletRequest request) {
        return person(request).map(Person::scope).orElse(Scope.ALL);
    }

    /** What of the record whoever asks may see. */
    static Sight sight(Handle h, HttpServletRequest request) {
        return Sight.of(h, scope(request));
    }

    /** Whether it is the program that has the token for the metrics, which is let in to nothing else. */
    static boolean scrapes(HttpServletRequest request) {
        return request.getAttribute(SCRAPES) != null;
    }

    /** Who asks, for the trail of corrections: as they called themselves on signing in. */
    static String who(HttpServletRequest request) {
        return session(request).map(Session::who).orElse("staff");
    }

    private static boolean knowsToken(HttpServletRequest request, Optional<Session> session) {
        String given = request.getHeader(TOKEN_HEADER);
        return given != null && session.isPresent() && MessageDigest.isEqual(
                given.getBytes(StandardCharsets.UTF_8), session.get().token().getBytes(StandardCharsets.UTF_8));
    }

    private void closed(HttpServletRequest request, HttpServletResponse response) throws IOException {
        if (request.getRequestURI().startsWith("/api/") || !LOOKING.contains(request.getMethod())) {
            refuse(response, 401, people.isGuarded() ? "Sign in first."
                    : "No staff PIN is set yet: until there is one, this works on the studio computer alone.");
            return;
        }
        response.setHeader("Cache-Control", "no-store");
        response.setStatus(HttpServletResponse.SC_SEE_OTHER);
        response.setHeader("Location", "/sign-in?to=" + URLEncoder.encode(request.getRequestURI(), StandardCharsets.UTF_8));
    }

    private static void refuse(HttpServletResponse response, int status, String words) throws IOException {
        response.setStatus(status);
        response.setHeader("Cache-Control", "no-store");
        response.setContentType("application/json");
        response.getOutputStream().write(Json.bytes(new Said(words)));
    }

    private record Said(String error) {
    }
}
