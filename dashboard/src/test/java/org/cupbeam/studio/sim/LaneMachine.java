package org.cupbeam.studio.sim;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.Topics;
import org.cupbeam.journal.JournalException;
import org.cupbeam.lane.LaneByHand;
import org.cupbeam.lane.Surroundings;
import org.cupbeam.link.LinkByHand;

/** A lane's board: the lane's own loop, journal and link, on a simulated machine. */
final class LaneMachine extends Machine implements LaneByHand.Heard, LinkByHand.Line, Call.Client {
    static final int CUP = 0;
    static final int PEDAL = 1;
    private static final long SINCE_1970_NS = LaneClock.BEGINNING.getEpochSecond() * Agenda.S;

    final Topics topics;
    final LaneClock clock;
    private final Network network;
    private final Broker broker;
    private final List<Runnable> whenBack = new ArrayList<>();
    private LaneByHand lane;
    private LinkByHand link;
    private Agent loop;
    private Agent scribe;
    private Agent speaker;
    private Call call;
    private Score score;
    private long told;
    private long diskSlowNs;
    private long setsClockWithinNs;
    private long in1970Ns;

    LaneMachine(Topics topics, Agenda agenda, Dice dice, Disk disk, Network network, Broker broker) {
        super(topics.lane(), agenda, dice, disk);
        this.topics = topics;
        this.network = network;
        this.broker = broker;
        clock = new LaneClock(agenda);
    }

    /** How fast its disk is, and how long after a start the network tells it the time, at most, ns; 0: it knows. */
    void has(long slowDiskNs, long clockWithinNs) {
        diskSlowNs = slowDiskNs;
        setsClockWithinNs = clockWithinNs;
    }

    /** Each start of its board is in 1970, and for so long. */
    void startsIn1970(long untilNs) {
        in1970Ns = untilNs;
    }

    /** Calls whenever the lane is back after an end. */
    void whenBack(Runnable told) {
        whenBack.add(told);
    }

    LaneByHand lane() {
        return lane;
    }

    /** The last that it let be known. */
    Score score() {
        return score;
    }

    boolean allStored() {
        return isOn() && link.online() && lane.outbox().stored() == lane.outbox().last();
    }

    @Override
    void powered() {
        String boot = "boot-" + dice.hex(8);
        if (in1970Ns > 0) {
            begins(boot, -SINCE_1970_NS, in1970Ns);
        } else if (setsClockWithinNs > 0) {
            begins(boot, dice.chance(0.5) ? -SINCE_1970_NS : -LaneClock.HOUR_NS / 3, dice.upToNs(setsClockWithinNs));
        } else {
            clock.boots(boot, 0);
        }
    }

    private void begins(String boot, long wrongByNs, long untilNs) {
        clock.boots(boot, wrongByNs);
        agenda.after(untilNs, () -> {
            if (clock.boot().equals(boot)) {
                clock.synchronises();
            }
        });
    }

    @Override
    void start() {
        try {
            Surroundings around = new Surroundings(clock::monotonicNs, 1, clock::wall, clock::isBelieved, clock.boot(),
                    "simulated");
            lane = new LaneByHand(topics, Green.RIG, disk.database(), around, this, () -> loop.wake());
            link = new LinkByHand(topics, clock.boot(), lane.outbox(), clock::monotonicNs, dice.generator(),
                    lane::hear, this);
        } catch (JournalException e) {
            throw new AssertionError(e);
        }
        if (lane.outbox().last() < told || lane.movedAside().isPresent()) {
            throw new AssertionError(name + " let " + told + " be known, and has " + lane.outbox().last()
                    + " after an end; moved aside: " + lane.movedAside());
        }
        loop = agent("loop", false, () -> lane.loop() > 0 ? Agent.WORKED : Math.min(lane.idleNs(), 250 * Agenda.MS));
        scribe = agent("scribe", true, () -> lane.scribe() > 0 ? Agent.WORKED : 500 * Agenda.MS);
        speaker = agent("link", true, () -> link.step() > 0 ? Agent.WORKED : 200 * Agenda.MS);
        lane.begin();
        loop.wake();
        scribe.wake();
        speaker.wake();
        whenBack.forEach(Runnable::run);
    }

    @Override
    void perish(End how, boolean withinStep) {
        if (call != null && how == End.KILLED) {
            call.dropByClient();
        } else if (call != null) {
            call.vanish(withinStep);
        }
        call = null;
        lane.close();
    }

    void edge(int channel, boolean active) {
        if (isOn()) {
            lane.edge(channel, active, clock.monotonicNs());
            agenda.after(1 + dice.upToNs(1 + diskSlowNs), () -> scribe.wake());
        }
    }

    @Override
    public void written() {
        speaker.wake();
    }

    @Override
    public void score(Score latest) {
        score = latest;
        link.score(latest);
        speaker.wake();
    }

    @Override
    public void health(Health.Report report) {
        link.health(report);
        speaker.wake();
    }

    @Override
    public void answer(Answer answer) {
        link.answer(answer);
        speaker.wake();
    }

    @Override
    public void connect(String willTopic, byte[] will) {
        call = new Call(network, broker, name, true, willTopic, will, this);
    }

    @Override
    public void subscribe(List<String> filters) {
        call.subscribe(filters);
    }

    @Override
    public void publish(long tag, String topic, byte[] payload, boolean retained) {
        told = lane.outbox().last();
        call.publish(tag, topic, payload, retained);
    }

    @Override
    public void drop() {
        if (call != null) {
            call.dropByClient();
            call = null;
        }
    }

    @Override
    public void accepted() {
        link.connected();
        speaker.wake();
    }

    @Override
    public void subscribed() {
        link.subscribed();
        speaker.wake();
    }

    @Override
    public void taken(long tag) {
        link.acknowledged(tag);
        speaker.wake();
    }

    @Override
    public void message(String topic, byte[] payload, boolean retained) {
        link.received(topic, payload, retained);
        speaker.wake();
    }

    @Override
    public void lost(String why) {
        link.failed(why);
        speaker.wake();
    }
}
