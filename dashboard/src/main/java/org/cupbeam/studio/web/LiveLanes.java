package org.cupbeam.studio.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
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

/** Every lane as it is now, and the streams that say so. */
public final class LiveLanes implements News.Reader {
    /** A lane in the list of lanes; its state a word of the page's: as health has it, or unheard. */
    record Listed(String studio, String lane, String state, String play) {
    }

    private record Pulse(boolean broker) {
    }

    private static final int MOST_LANES = 2_048;
    private static final String LIST = "/lanes";

    private final String born;
    private final Stream list;
    private final Map<String, LiveLane> lanes = new ConcurrentSkipListMap<>();
    private volatile BooleanSupplier brokerThere = () -> false;
    private volatile BiConsumer<Topics, Answer> answers = (topics, answer) -> { };

    /** @param born tells this start of the host from others, in the ids of what the streams say */
    public LiveLanes(String born) {
        this.born = born;
        this.list = new Stream(born);
        sayList();
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
        list.say("pulse", json);
        lanes.values().forEach(lane -> lane.stream().say("pulse", json));
    }

    /** Lets every watcher go, for good. */
    void end() {
        list.end();
        lanes.values().forEach(lane -> lane.stream().end());
    }

    /** The lanes known, in order of their names. */
    List<LiveLane> all() {
        return List.copyOf(lanes.values());
    }

    /** How many watch, all streams together. */
    int watchers() {
        return list.watchers() + lanes.values().stream().mapToInt(lane -> lane.stream().watchers()).sum();
    }

    /** Whether the broker can be reached. */
    boolean hearsBroker() {
        return brokerThere.getAsBoolean();
    }

    /** A lane that has been heard. */
    Optional<LiveLane> find(Topics topics) {
        return Optional.ofNullable(lanes.get(key(topics))).filter(LiveLane::heard);
    }

    /** The stream of a path below {@code /live}; a lane may be watched before it is first heard. */
    Optional<Stream> stream(String path) {
        if (LIST.equals(path)) {
            return Optional.of(list);
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

    private void sayList() {
        list.say("lanes", Json.bytes(lanes.values().stream().filter(LiveLane::heard).map(LiveLane::listed).toList()));
    }
}
