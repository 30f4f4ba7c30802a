package org.cupbeam.studio.web;

import static org.cupbeam.studio.web.access.Right.ANYBODY;
import static org.cupbeam.studio.web.access.Right.COACH;
import static org.cupbeam.studio.web.access.Right.EXPORT;
import static org.cupbeam.studio.web.access.Right.FORGET;
import static org.cupbeam.studio.web.access.Right.HOST;
import static org.cupbeam.studio.web.access.Right.LOOK;
import static org.cupbeam.studio.web.access.Right.PLAY;
import static org.cupbeam.studio.web.access.Right.PLAYERS;
import static org.cupbeam.studio.web.access.Right.STAFF;
import static org.cupbeam.studio.web.access.Right.USAGE;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cupbeam.studio.web.access.Right;

/**
 * What each address asks of whoever asks: the one table of it, as {@link Right} is of who has what. An address without a line
 * answers nobody.
 */
final class Addresses {
    private static final Map<String, Right> LINES = new LinkedHashMap<>();

    static {
        get(ANYBODY, "/", "/alive", "/ready", "/lanes", "/board/{studio}/{lane}", "/sign-in", "/api/session");
        post(ANYBODY, "/api/session");
        delete(ANYBODY, "/api/session");

        get(LOOK, "/lib/d3-7.9.0.js", "/control", "/control/{studio}/{lane}", "/players", "/player/{id}", "/runs", "/run/{id}", "/health",
                "/health/{studio}/{lane}", "/green", "/green/{studio}/{lane}", "/card", "/drills");
        get(LOOK, "/api/lanes/{studio}/{lane}/putts", "/api/names", "/api/players", "/api/player/{id}", "/api/runs", "/api/runs/choices",
                "/api/run/{id}", "/api/health", "/api/health/{studio}/{lane}/places", "/api/green", "/api/green/{studio}/{lane}",
                "/api/card", "/api/card/export", "/api/drills", "/api/drills/{id}/file", "/api/presets/{key}/file");
        put(LOOK, "/api/session/secret");

        post(PLAY, "/api/lanes/{studio}/{lane}/commands"); // what else but start and end is asked for by ControlRoutes
        post(PLAYERS, "/api/players");
        put(PLAYERS, "/api/player/{id}");
        get(USAGE, "/usage", "/api/usage");

        get(COACH, "/leagues", "/league/{id}", "/api/leagues", "/api/leagues/choices", "/api/league/{id}");
        post(COACH, "/api/leagues", "/api/league/{id}/put-back");
        put(COACH, "/api/league/{id}");
        delete(COACH, "/api/league/{id}");
        get(COACH, "/insight", "/insight/{id}", "/advice/{id}", "/report/{id}", "/green/{studio}/{lane}/test");
        get(COACH, "/api/insight/{id}", "/api/insight/{id}/next", "/api/report/{id}", "/api/changes", "/api/green/{studio}/{lane}/test");
        post(COACH, "/api/player/{id}/notes", "/api/run/{id}/notes", "/api/attempt/{id}/notes", "/api/attempt/{id}/void",
                "/api/attempt/{id}/restore", "/api/run/{id}/reassign", "/api/player/{id}/merge");
        delete(COACH, "/api/note/{id}", "/api/drills/{id}");
        post(COACH, "/api/drills", "/api/drills/{id}/put-back", "/api/drill-text/read", "/api/drill-text/write", "/api/drill-rehearsal",
                "/api/green/{studio}/{lane}/test/keep", "/api/health/{studio}/{lane}/places/file");
        put(COACH, "/api/drills/{id}", "/api/green/{studio}/{lane}/range");

        get(EXPORT, "/api/players/export", "/api/runs/export", "/api/player/{id}/export", "/api/record/export", "/api/usage/export",
                "/api/green/{studio}/{lane}/export", "/api/league/{id}/export");
        delete(FORGET, "/api/player/{id}");

        get(STAFF, "/staff", "/api/staff");
        post(STAFF, "/api/staff", "/api/staff/{id}/put-back");
        put(STAFF, "/api/staff/{id}", "/api/staff/{id}/secret");
        delete(STAFF, "/api/staff/{id}");

        get(HOST, "/metrics");
        put(HOST, "/api/pin", "/api/usage/hours");
        post(HOST, "/api/import");
    }

    private Addresses() {
    }

    /** What a route asks for; empty for one that nobody has decided about. @param path as the route has it: {@code /api/run/{id}} */
    static Optional<Right> right(String method, String path) {
        return Optional.ofNullable(LINES.get(method + " " + path));
    }

    /** All lines, as {@code GET /api/run/{id}}. */
    static List<String> all() {
        return List.copyOf(LINES.keySet());
    }

    private static void get(Right right, String... paths) {
        add("GET", right, paths);
    }

    private static void post(Right right, String... paths) {
        add("POST", right, paths);
    }

    private static void put(Right right, String... paths) {
        add("PUT", right, paths);
    }

    private static void delete(Right right, String... paths) {
        add("DELETE", right, paths);
    }

    private static void add(String method, Right right, String... paths) {
        for (String path : paths) {
            if (LINES.put(method + " " + path, right) != null) {
                throw new IllegalStateException(method + " " + path + " has two lines");
            }
        }
    }
}
