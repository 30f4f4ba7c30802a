package org.cupbeam.studio.sim;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * A broker of MQTT 3.1.1 at QoS 1: sessions, retained messages, wills, and what goes wrong with them. It may lose all
 * that it holds; says messages twice; lets go of what its queues have no room for; and, where the seed says so, more than
 * the standard allows: messages of events, of how far they are stored, commands and answers are lost, and events come
 * in any order after a new connection. Scores and health are lost with a connection only, as the standard has it.
 */
final class Broker {
    private static final int WINDOW = 20;

    private record Packet(long number, String topic, byte[] payload, boolean retained) {
    }

    private static final class Session {
        private final Set<String> filters = new LinkedHashSet<>();
        private final Map<Long, Packet> underWay = new LinkedHashMap<>();
        private final Deque<Packet> queue = new ArrayDeque<>();
        private Call call;
        private boolean clean;
    }

    private final Dice dice;
    private final Unruly unruly;
    private final Map<String, byte[]> retained = new LinkedHashMap<>();
    private final Map<String, Session> sessions = new LinkedHashMap<>();
    private boolean up = true;
    private long packets;

    /**
     * How unruly it is.
     *
     * @param loses    of messages, while all seems well
     * @param doubles  of messages
     * @param shuffles what waited for a client that was away
     * @param room     how many messages wait for a client at most
     */
    record Unruly(double loses, double doubles, boolean shuffles, int room) {
        Unruly calmed() {
            return new Unruly(0, 0, false, 1_000);
        }
    }

    private Unruly now;

    Broker(Dice dice, Unruly unruly) {
        this.dice = dice;
        this.unruly = unruly;
        this.now = unruly;
    }

    boolean isUp() {
        return up;
    }

    void calmDown() {
        now = unruly.calmed();
    }

    /** It ends, whether it keeps what it holds or not. */
    void stop(boolean forgets) {
        up = false;
        for (Session each : List.copyOf(sessions.values())) {
            if (each.call != null) {
                Call call = each.call;
                each.call = null;
                call.dropByBroker("the broker is gone");
            }
        }
        if (forgets) {
            sessions.clear();
            retained.clear();
        }
    }

    void start() {
        up = true;
    }

    void connect(Call call) {
        Session old = sessions.get(call.clientId);
        if (old != null && old.call != null) {
            end(old, "taken over");
        }
        Session session = old == null || call.cleanSession || old.clean ? new Session() : old;
        session.call = call;
        session.clean = call.cleanSession;
        sessions.put(call.clientId, session);
        call.accepted();
        List<Packet> again = new ArrayList<>(session.underWay.values());
        session.underWay.clear();
        again.addAll(session.queue);
        session.queue.clear();
        if (now.shuffles()) {
            shuffleEvents(again);
        }
        again.forEach(each -> enqueue(session, each));
    }

    private void shuffleEvents(List<Packet> waiting) {
        List<Packet> events = new ArrayList<>(waiting.stream().filter(each -> each.topic().endsWith("/event")).toList());
        waiting.removeAll(events);
        Collections.shuffle(events, new Random(dice.between(0, 1 << 30)));
        waiting.addAll(0, events);
    }

    void subscribe(Call call, List<String> filters) {
        Session session = of(call);
        if (session != null) {
            session.filters.addAll(filters);
            call.subscribed();
            retained.forEach((topic, payload) -> {
                if (filters.stream().anyMatch(filter -> matches(filter, topic))) {
                    enqueue(session, new Packet(++packets, topic, payload, true));
                }
            });
        }
    }

    void publish(Call call, long tag, String topic, byte[] payload, boolean keep) {
        if (of(call) != null) {
            publish(topic, payload, keep);
            call.taken(tag);
        }
    }

    private void publish(String topic, byte[] payload, boolean keep) {
        if (keep) {
            retained.put(topic, payload);
        }
        boolean mayBeLost = mayBeLost(topic);
        for (Session each : sessions.values()) {
            if (each.filters.stream().anyMatch(filter -> matches(filter, topic))
                    && !(mayBeLost && dice.chance(now.loses()))) {
                for (int i = 0; i < (dice.chance(now.doubles()) ? 2 : 1); i++) {
                    enqueue(each, new Packet(++packets, topic, payload, false));
                }
            }
        }
    }

    void acknowledged(Call call, long packet) {
        Session session = of(call);
        if (session != null && session.underWay.remove(packet) != null) {
            Packet next = session.queue.poll();
            if (next != null) {
                push(session, next);
            }
        }
    }

    /** The connection is gone without a word. */
    void gone(Call call) {
        Session session = of(call);
        if (session != null) {
            end(session, "closed");
        }
    }

    private void end(Session session, String why) {
        Call call = session.call;
        session.call = null;
        call.dropByBroker(why);
        if (session.clean) {
            sessions.remove(call.clientId);
        }
        if (call.willTopic != null) {
            publish(call.willTopic, call.will, true);
        }
    }

    private Session of(Call call) {
        Session session = sessions.get(call.clientId);
        return session != null && session.call == call ? session : null;
    }

    private void enqueue(Session session, Packet packet) {
        if (session.call != null && session.underWay.size() < WINDOW) {
            push(session, packet);
        } else if (session.queue.size() < now.room() || !mayBeLost(packet.topic())) {
            session.queue.add(packet);
        }
    }

    private void push(Session session, Packet packet) {
        session.underWay.put(packet.number(), packet);
        session.call.push(packet.number(), packet.topic(), packet.payload(), packet.retained());
    }

    private static boolean mayBeLost(String topic) {
        return !topic.endsWith("/score") && !topic.endsWith("/health");
    }

    private static boolean matches(String filter, String topic) {
        String[] wanted = filter.split("/");
        String[] levels = topic.split("/");
        boolean matches = wanted.length == levels.length;
        for (int i = 0; matches && i < wanted.length; i++) {
            matches = wanted[i].equals("+") || wanted[i].equals(levels[i]);
        }
        return matches;
    }
}
