"""A yardstick for the benchmarks, and nothing else: not part of Cupbeam, and not to be used at a hole.

What a hobbyist would write in an afternoon for the same job: paho-mqtt, a callback for each edge, the speed from one
beam of a pair to the other. It has no journal, so a putt is lost with its power or its broker; feet, hands and
chatter make attempts; the finish has no uncertainty. It shows what the plain way costs and gives.

    python3 yardstick.py replay trace.vcd          how fast edges go through
    python3 yardstick.py live trace.vcd PORT N     N holed putts published on topic yardstick/event, one every 40 ms
"""

import json
import sys
import time

PAIR_MM = 60.0
DECELERATION_MM_S2 = (6 * 304.8) ** 2 / (2 * 10 * 304.8)  # a green of stimp 10


class Lane:
    def __init__(self, publish):
        self.publish = publish
        self.first_seen = {}
        self.speed = None

    def on_edge(self, channel, active, t):
        if not active:
            if channel == "cup" and self.speed is not None:
                self.attempt(t, "holed", None)
        elif channel in ("before-1", "past-1"):
            self.first_seen[channel] = t
        elif channel == "before-2":
            self.missed_short(t)
            self.speed = self.speed_from("before-1", t)
        elif channel == "past-2":
            speed = self.speed_from("past-1", t)
            if speed is not None:
                self.attempt(t, "missed", 974.4 + speed ** 2 / (2 * DECELERATION_MM_S2))

    def speed_from(self, channel, t):
        since = self.first_seen.pop(channel, None)
        return PAIR_MM / (t - since) if since is not None and 0 < t - since < 3 else None

    def missed_short(self, t):
        if self.speed is not None:
            self.attempt(t, "missed", -240 + self.speed ** 2 / (2 * DECELERATION_MM_S2))

    def attempt(self, t, outcome, finish_mm):
        self.speed = None
        self.publish({"t_s": t, "outcome": outcome, "finish_mm": finish_mm})


def read(path, on_edge):
    names = {}
    t = 0.0
    count = 0
    with open(path) as trace:
        for line in trace:
            if line[0] == "#":
                t = int(line[1:]) * 1e-6
            elif line[0] in "01":
                on_edge(names[line[1:-1]], line[0] == "1", t)
                count += 1
            elif line.startswith("$var"):
                words = line.split()
                names[words[3]] = words[4]
    return count


def replay(path):
    attempts = []
    lane = Lane(lambda putt: attempts.append(json.dumps(putt)))
    wall, cpu = time.perf_counter(), time.process_time()
    edges = read(path, lane.on_edge)
    wall, cpu = time.perf_counter() - wall, time.process_time() - cpu
    print(f"{edges / wall / 1e6:.2f} M edges/s, {edges / cpu / 1e6:.2f} M edges/cpu-s, {len(attempts)} attempts told")


def live(path, port, putts):
    import paho.mqtt.client as mqtt

    client = mqtt.Client("yardstick")
    client.connect("127.0.0.1", port)
    client.loop_start()
    decided_ns = 0

    def publish(putt):
        client.publish("yardstick/event", json.dumps({**putt, "decided_ns": decided_ns}), qos=1)

    lane = Lane(publish)
    edges = []
    read(path, lambda *edge: edges.append(edge))
    for i in range(putts):
        # One evening after another; of each putt only the last edge finds the program at rest.
        for channel, active, t in edges[:-1]:
            lane.on_edge(channel, active, t + 10 * i)
        time.sleep(0.04)
        channel, active, t = edges[-1]
        decided_ns = time.monotonic_ns()
        lane.on_edge(channel, active, t + 10 * i)
    time.sleep(1)
    client.loop_stop()


if __name__ == "__main__":
    if sys.argv[1] == "replay":
        replay(sys.argv[2])
    else:
        live(sys.argv[2], int(sys.argv[3]), int(sys.argv[4]))
