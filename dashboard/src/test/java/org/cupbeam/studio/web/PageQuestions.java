package org.cupbeam.studio.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.Function;

/** All that pages ask of the host, one entry for each kind of asking; what is asked for varies from time to time. */
public final class PageQuestions {
    /**
     * What there is to ask for.
     *
     * @param busy      players with the most putts; quiet ones have the fewest, but some
     * @param runs      of any time; the longest have the most putts
     * @param changes   places in the list of what was put right
     * @param drills    names; kept ones are numbers on the shelf
     * @param leagues   numbers, the longest first
     */
    public record Found(Random random, String studio, List<String> lanes, List<Integer> laneIds, List<Integer> busy,
                        List<Integer> quiet, List<String> names, List<Run> runs, List<Integer> longest, List<String> changes,
                        List<String> drills, List<Integer> kept, List<Integer> leagues,
                        LocalDate today) {
        <T> T any(List<T> of) {
            return of.get(random.nextInt(of.size()));
        }

        LocalDate day() {
            return today.minusDays(random.nextInt(365));
        }
    }

    /** A run's number and when it began, which make its place in the list. */
    public record Run(int id, long startedMs) {
        LocalDate day() {
            return Instant.ofEpochMilli(startedMs).atOffset(ZoneOffset.UTC).toLocalDate();
        }
    }

    /**
     * One kind of asking.
     *
     * @param route     as the host has it
     * @param what      in words
     * @param firstByte whether a file is asked for, of which the beginning is waited for
     * @param path      for one time
     */
    public record Question(String route, String what, boolean firstByte, Function<Found, String> path) {
    }

    private static final List<String> BREAKS = List.of("left-to-right", "right-to-left", "straight");
    private static final List<String> SLOPES = List.of("uphill", "downhill", "level");
    private static final String CARD = "stimp_ft=%.1f&uphill_percent=%.1f&side_percent=%.1f&past_mm=400&stations_mm="
            + "915,1829,2743,3658,4572,5486,6401,7315,8230,9144";

    /** Of the store. */
    public static final List<Question> STORED = List.of(
            ask("/alive", "whether the host is alive", f -> "/alive"),
            ask("/ready", "whether it is ready", f -> "/ready"),
            ask("/metrics", "its metrics", f -> "/metrics"),
            ask("/api/players", "players, who was here last", f -> "/api/players"),
            ask("/api/players", "players by name, any page", f -> "/api/players?by=name&after=" + f.any(f.quiet)),
            ask("/api/players", "players, a name looked for", f -> "/api/players?name=" + part(f)),
            ask("/api/player/{id}", "a player with many putts", f -> "/api/player/" + f.any(f.busy)),
            ask("/api/player/{id}", "a player with few putts", f -> "/api/player/" + f.any(f.quiet)),
            ask("/api/runs", "runs, the newest", f -> "/api/runs"),
            ask("/api/runs", "runs, far back", f -> "/api/runs?after=" + place(f)),
            ask("/api/runs", "runs of a busy player", f -> "/api/runs?player=" + f.any(f.busy)),
            ask("/api/runs", "runs of a quiet player, far back", f -> "/api/runs?player=" + f.any(f.quiet) + "&after=" + place(f)),
            ask("/api/runs", "runs of a drill, far back", f -> "/api/runs?drill=" + text(f.any(f.drills)) + "&after=" + place(f)),
            ask("/api/runs", "runs by tags, a month", f -> "/api/runs?" + tags(f) + month(f)),
            ask("/api/runs", "runs by player, drill, tags, lane", f -> "/api/runs?" + narrow(f, f.busy) + tags(f)),
            ask("/api/runs", "runs by all of it, a quiet player", f -> "/api/runs?" + narrow(f, f.quiet) + tags(f) + month(f)),
            ask("/api/runs", "runs on a lane, 200 at once, far back", f -> "/api/runs?limit=200&lane=" + f.any(f.laneIds)
                    + "&after=" + place(f)),
            ask("/api/runs/choices", "what runs can be asked for by", f -> "/api/runs/choices"),
            ask("/api/runs/choices", "the same, a name looked for", f -> "/api/runs/choices?name=" + part(f)),
            ask("/api/run/{id}", "a run, putt by putt", f -> "/api/run/" + f.any(f.runs).id()),
            ask("/api/run/{id}", "a long run, putt by putt", f -> "/api/run/" + f.any(f.longest)),
            ask("/api/changes", "what was put right, the newest", f -> "/api/changes"),
            ask("/api/changes", "what was put right, far back", f -> "/api/changes?after=" + f.any(f.changes)),
            ask("/api/report/{id}", "the last report of a busy player", f -> "/api/report/" + f.any(f.busy)),
            ask("/api/report/{id}", "a busy player's report, far back", f -> "/api/report/" + f.any(f.busy) + "?day="
                    + f.any(f.runs).day()),
            ask("/api/report/{id}", "a quiet player's report", f -> "/api/report/" + f.any(f.quiet)),
            ask("/api/usage", "this month of usage", f -> "/api/usage"),
            ask("/api/usage", "any month of usage", f -> "/api/usage?month=" + f.day().toString().substring(0, 7)),
            ask("/api/leagues", "leagues", f -> "/api/leagues"),
            ask("/api/leagues/choices", "what a league can be opened for", f -> "/api/leagues/choices"),
            ask("/api/league/{id}", "a league of half a year, this week", f -> "/api/league/" + f.leagues.get(0)),
            ask("/api/league/{id}", "any league", f -> "/api/league/" + f.any(f.leagues)),
            file("/api/league/{id}/export", "a league of half a year", f -> "/api/league/" + f.leagues.get(0) + "/export?as=json"),
            ask("/api/green", "all greens now", f -> "/api/green"),
            ask("/api/green/{studio}/{lane}", "a green, today and 60 days", f -> "/api/green/" + lane(f)),
            ask("/api/green/{studio}/{lane}", "a green, any day and the 60 before", f -> "/api/green/" + lane(f) + "?day=" + f.day()),
            ask("/api/green/{studio}/{lane}/test", "the green's rolling test", f -> "/api/green/" + lane(f) + "/test"),
            ask("/api/health", "all rigs", f -> "/api/health"),
            ask("/api/health/{studio}/{lane}/places", "where a lane's beams stand", f -> "/api/health/" + lane(f) + "/places"),
            ask("/api/lanes/{studio}/{lane}/putts", "a lane's last putts", f -> "/api/lanes/" + lane(f) + "/putts"),
            ask("/api/names", "names for the next game", f -> "/api/names"),
            ask("/api/drills", "drills", f -> "/api/drills"),
            ask("/api/drills/{id}/file", "a kept drill's file", f -> "/api/drills/" + f.any(f.kept) + "/file"),
            ask("/api/presets/{key}/file", "a preset's file", f -> "/api/presets/ladder/file"),
            ask("/api/session", "who is signed in", f -> "/api/session"),
            ask("/api/staff", "who of the staff signs in", f -> "/api/staff"),
            ask("/api/card", "a card of breaks", f -> "/api/card?" + card(f)),
            file("/api/card/export", "a card as CSV", f -> "/api/card/export?as=csv&" + card(f)),
            file("/api/players/export", "players as CSV", f -> "/api/players/export?as=csv"),
            file("/api/runs/export", "runs by filter as CSV", f -> "/api/runs/export?as=csv&sheet=runs&" + tags(f)),
            file("/api/runs/export", "putts by filter as CSV", f -> "/api/runs/export?as=csv&sheet=attempts&" + narrow(f, f.busy)),
            file("/api/runs/export", "both as JSON", f -> "/api/runs/export?as=json"),
            file("/api/player/{id}/export", "all of a busy player", f -> "/api/player/" + f.any(f.busy) + "/export?as=json"),
            file("/api/record/export", "the whole record", f -> "/api/record/export?as=json"),
            file("/api/usage/export", "a month of usage as JSON", f -> "/api/usage/export?as=json&month="
                    + f.day().toString().substring(0, 7)),
            file("/api/green/{studio}/{lane}/export", "a green's readings", f -> "/api/green/" + lane(f) + "/export?as=json&day="
                    + f.day()));

    /** Of a player's putts, all of them worked out: what that costs has a benchmark of its own. */
    public static final List<Question> WORKED_OUT = List.of(
            ask("/api/insight/{id}", "insight and advice, a busy player", f -> "/api/insight/" + f.any(f.busy)),
            ask("/api/insight/{id}", "insight and advice, a quiet player", f -> "/api/insight/" + f.any(f.quiet)),
            ask("/api/insight/{id}", "insight, a duel of two", f -> "/api/insight/" + f.busy.get(0) + "?against=" + f.any(f.busy)),
            ask("/api/insight/{id}/next", "the next putts", f -> "/api/insight/" + f.any(f.busy) + "/next?distance_mm=1829&putts=10"));

    /** Pages, which are files of the host's own and ask the store nothing. */
    public static final List<String> PAGES = List.of("/", "/lanes", "/board/{studio}/{lane}", "/control",
            "/control/{studio}/{lane}", "/players", "/player/{id}", "/runs", "/run/{id}", "/report/{id}", "/usage", "/health",
            "/health/{studio}/{lane}", "/green", "/green/{studio}/{lane}", "/green/{studio}/{lane}/test", "/card", "/drills",
            "/insight", "/insight/{id}", "/advice/{id}", "/leagues", "/league/{id}", "/staff", "/sign-in", "/lib/d3-7.9.0.js");

    private PageQuestions() {
    }

    /** A page's own address, of something that is there. */
    public static String page(String route, Found f) {
        return route.replace("{studio}/{lane}", lane(f)).replace("{id}", "" + f.any(f.busy));
    }

    private static Question ask(String route, String what, Function<Found, String> path) {
        return new Question(route, what, false, path);
    }

    private static Question file(String route, String what, Function<Found, String> path) {
        return new Question(route, what, true, path);
    }

    private static String lane(Found f) {
        return f.studio + "/" + f.any(f.lanes);
    }

    private static String place(Found f) {
        Run run = f.any(f.runs);
        return run.startedMs() + "_" + run.id();
    }

    private static String part(Found f) {
        String name = f.any(f.names);
        int length = Math.min(name.length(), 1 + f.random.nextInt(4));
        return text(name.substring(0, length));
    }

    private static String tags(Found f) {
        return "&breaks=" + f.any(BREAKS) + "&slope=" + f.any(SLOPES);
    }

    private static String month(Found f) {
        LocalDate day = f.day();
        return "&from=" + day.minusDays(30) + "&to=" + day;
    }

    private static String narrow(Found f, List<Integer> players) {
        return "player=" + f.any(players) + "&drill=" + text(f.any(f.drills)) + "&lane=" + f.any(f.laneIds);
    }

    private static String card(Found f) {
        return String.format(Locale.ROOT, CARD, 8 + f.random.nextInt(40) / 10.0, f.random.nextInt(21) / 10.0 - 1,
                f.random.nextInt(31) / 10.0 - 1.5);
    }

    private static String text(String words) {
        return URLEncoder.encode(words, StandardCharsets.UTF_8);
    }
}
