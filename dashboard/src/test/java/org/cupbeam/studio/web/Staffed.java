package org.cupbeam.studio.web;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.Scenes;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.access.StaffPin;

/** A host whose staff sign in by name: Ada owns it all, Olga the studio mill; Carl coaches and Dora sits at the desk there. */
public final class Staffed implements AutoCloseable {
    public static final String PIN = "739205";
    /** Of everybody, the name before it: {@code Ada-48151623}. */
    private static final String SECRET = "-48151623";

    final StaffPin pin;
    final Store store;
    final LiveLanes lanes = new LiveLanes("test");
    final WebServer web;

    private Staffed(Path folder) throws Exception {
        pin = StaffPin.quick(folder.resolve("staff-pin"));
        store = Store.open(Database.file(folder.resolve("studio.db")));
        lanes.askBroker(() -> true);
        lanes.score(new Topics("mill", "lane-1"), Scenes.duel(false));
        web = new WebServer(store, lanes, pin).start("127.0.0.1", 0);
    }

    /** Before anybody has a name. */
    static Staffed byPin(Path folder) throws Exception {
        Staffed host = new Staffed(folder);
        host.pin.set(PIN);
        return host;
    }

    static Staffed byName(Path folder) throws Exception {
        Staffed host = byPin(folder);
        Visit ada = host.visit().signIn(PIN, "Ada");
        add(ada, "Ada", "owner", null);
        ada.arrives();
        add(ada, "Olga", "owner", List.of("mill"));
        add(ada, "Carl", "coach", List.of("mill"));
        add(ada, "Dora", "desk", List.of("mill"));
        return host;
    }

    /** @return the number */
    public static int add(Visit by, String name, String role, List<String> studiosOrNull) throws Exception {
        Map<String, Object> given = new HashMap<>(Map.of("name", name, "secret", secret(name), "role", role));
        given.put("studios", studiosOrNull);
        var answer = by.send("POST", "/api/staff", given);
        if (answer.statusCode() != 200) {
            throw new AssertionError(name + " was not added: " + answer.statusCode() + " " + answer.body());
        }
        return Visit.json(answer).get("id").asInt();
    }

    public static String secret(String name) {
        return name + SECRET;
    }

    Visit visit() {
        return new Visit(web.port());
    }

    Visit as(String name) throws Exception {
        return visit().signInAs(name, secret(name));
    }

    @Override
    public void close() {
        web.close();
        store.close();
    }
}
