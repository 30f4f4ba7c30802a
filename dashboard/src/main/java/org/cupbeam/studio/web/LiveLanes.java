package org.cupbeam.studio.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ingest.News;
import org.cupbeam.studio.store.Scope;

/** Every lane as it is now, and the streams that say so. */
public final class LiveLanes implements News.Reader {
    /** A lane in the list of lanes; its state a word of the page's: as health has it, or unheard. */
    record Listed(String studio, String lane, String state, String play) {
    }

    private record Pulse(boolean broker) {
    }

    private static final int MOST_LANES = 2_048;
    private static final int MOST_LISTS = 256;
    private static final String LIST = "/lanes";

    private final String born;
    private final Map<Scope, Stream> lists = new ConcurrentHashMap<>();
    private final Map<String, LiveLane> lanes = new ConcurrentSkipListMap<>();
    private volatile BooleanSupplier brokerThere = () -> false;
    private volatile BiConsumer<Topics, Answer> answers = (topics, answer) -> { };

    /** @param born tells this start of the host from others, in the ids of what the streams say */
    public LiveLanes(String born) {
        this.born = born;
        list(Scope.ALL);
    }

    /** How to find out whether the broker can be reached. */
    public void askBroker(BooleanSupplier there) {
        brokerThere = there;
    }

    /** Who waits for what lanes say to commands; boards do not. */
    void answersTo(BiConsumer<Topics, Answer> asker) {
        answers = asker;
    }

    @Override
    public void score(Topics topics, Score score) {
        lane(topics).ifPresent(lane -> {
            if (lane.score(score)) {
                sayList();
            }
            lane.stream().say("score", ScoreJson.encode(score));
        });
    }

    @Override
    public void health(Topics topics, Health health) {
        lane(topics).filter(lane -> lane.health(health)).ifPresent(lane -> {
            lane.stream().say("health", HealthJson.encode(health));
            sayList();
        });
    }

    @Override
    public void answer(Topics topics, Answer answer) {
        answers.accept(topics, answer);
    }

    /** Tells every watcher that the host lives, and whether it hears the lanes. */
    void pulse() {
        byte[] json = Json.bytes(new Pulse(brokerThere.getAsBoolean()));
        lists.values().forEach(each -> each.say("pulse", json));
        lanes.values().forEach(lane -> lane.stream().say("pulse", json));
    }

    /** Lets every watcher go, for good. */
    void end() {
        lists.values().forEach(Stream::end);
        lanes.values().forEach(lane -> lane.stream().end());
    }

    /** The lanes known, in order of their names. */
    List<LiveLane> all() {
        return List.copyOf(lanes.values());
    }

    /** Those of them that have been heard, of some studios. */
    List<LiveLane> heard(Scope scope) {
        return lanes.values().stream().filter(LiveLane::heard).filter(each -> scope.includes(each.topics().studio())).toList();
    }

    /** How many watch, all streams together. */
    int watchers() {
        return lists.values().stream().mapToInt(Stream::watchers).sum() + lanes.values().stream().mapToInt(lane -> lane.stream().watchers()).sum();
    }

    /** Whether the broker can be reached. */
    boolean hearsBroker() {
        return brokerThere.getAsBoolean();
    }

    /** A lane that has been heard. */
    Optional<LiveLane> find(Topics topics) {
        return Optional.ofNullable(lanes.get(key(topics))).filter(LiveLane::heard);
    }

    /**
     * The stream of a path below {@code /live}; a lane may be watched before it is first heard.
     *
     * @param scope of the list: a lane is watched by whoever has its link
     */
    Optional<Stream> stream(String path, Scope scope) {
        if (LIST.equals(path)) {
            return list(scope);
        }
        String[] parts = path == null ? new String[0] : path.split("/", -1);
        boolean lane = parts.length == 3 && Topics.isName(parts[1]) && Topics.isName(parts[2]);
        return lane ? lane(new Topics(parts[1], parts[2])).map(LiveLane::stream) : Optional.empty();
    }

    private Optional<LiveLane> lane(Topics topics) {
        String key = key(topics);
        if (!lanes.containsKey(key) && lanes.size() >= MOST_LANES) {
            return Optional.empty();
        }
        return Optional.of(lanes.computeIfAbsent(key, k -> new LiveLane(topics, new Stream(born))));
    }

    private static String key(Topics topics) {
        return topics.studio() + "/" + topics.lane();
    }

    /** The list of some studios' lanes, which from now on is told to whoever watches it. */
    private synchronized Optional<Stream> list(Scope scope) {
        if (!lists.containsKey(scope) && lists.size() >= MOST_LISTS) {
            lists.entrySet().removeIf(each -> !each.getKey().isAll() && each.getValue().watchers() == 0);
        }
        if (!lists.containsKey(scope)) {
            if (lists.size() >= MOST_LISTS) {
                return Optional.empty();
            }
            lists.put(scope, new Stream(born));
            sayList(scope);
        }
        return Optional.of(lists.get(scope));
    }

    private synchronized void sayList() {
        lists.keySet().forEach(this::sayList);
    }

    private void sayList(Scope scope) {
        lists.get(scope).say("lanes", Json.bytes(heard(scope).stream().map(LiveLane::listed).toList()));
    }
}
