package org.cupbeam.studio.store;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.store.logbook.Importer;
import org.cupbeam.studio.store.logbook.LogFilter;
import org.cupbeam.studio.store.logbook.LogSheets;
import org.cupbeam.studio.store.sheet.BadRow;
import org.cupbeam.studio.store.sheet.JsonBook;

/**
 * Two studios' lanes and their staff, who do anything at all in any order: play, lose the clock and find it, take putts back, send
 * late or never, take in what another host exported, void, restore, give runs away, merge, rename and forget players, write notes.
 */
final class Turmoil {
    private static final List<String> PLAYERS = List.of("Ada", "Bo", "Cy", "Di", "Ed");

    /** A lane, all that it said, and how far the store and the other host have heard it. */
    private static final class Lane {
        final ScriptedLane says;
        final List<Event> said = new ArrayList<>();
        String run;
        String player;
        int station = 1;
        int boots;
        boolean lost;
        int kept;
        int elsewhere;

        Lane(String studio, String name) {
            says = new ScriptedLane(studio, name, studio + name);
        }
    }

    private final Random random;
    private final Store store;
    private final Keeper keeper;
    private final Store other;
    private final Keeper others;
    private final List<Lane> lanes = List.of(new Lane("home", "one"), new Lane("home", "two"), new Lane("away", "one"));
    private int runs;

    Turmoil(Random random, Store store, Store other) {
        this.random = random;
        this.store = store;
        this.keeper = new Keeper(store);
        this.other = other;
        this.others = new Keeper(other);
    }

    /** Something happens. @return what, for the report of a failure */
    String next() {
        Lane lane = lanes.get(random.nextInt(lanes.size()));
        int what = random.nextInt(100);
        if (what < 40) {
            for (int i = random.nextInt(12); i >= 0; i--) {
                speaks(lane);
            }
            return "a lane speaks";
        }
        if (what < 75) {
            return hears(lane);
        }
        return what < 78 ? takesIn() : what < 82 ? notes() : staff();
    }

    private void speaks(Lane lane) {
        ScriptedLane says = lane.says.passes(random.nextInt(10) == 0 ? 200 + random.nextInt(4_000) : random.nextInt(90));
        int what = random.nextInt(30);
        if (lane.run == null || what == 0) {
            lane.run = "run-" + ++runs;
            lane.player = PLAYERS.get(random.nextInt(PLAYERS.size()));
            lane.station = 1;
            if (random.nextInt(8) > 0) { // or its beginning is not told
                lane.said.add(says.starts(lane.run, random.nextInt(3) == 0 ? "duel-" + runs / 2 : null, lane.player, 1));
            }
        } else if (what == 1) {
            lane.said.add(says.ends(lane.run, null, lane.player, 1, 3, 1, 250));
            lane.run = null;
        } else if (what == 2 && !lane.said.isEmpty()) {
            lane.said.add(says.takesBack(1 + random.nextInt((int) says.sequence())));
        } else if (what == 3 && !lane.said.isEmpty()) {
            lane.said.add(says.voids(1 + random.nextInt((int) says.sequence()), "coach", null));
        } else if (what == 4) {
            says.boots("boot-" + ++lane.boots + says.source.lane(), Instant.EPOCH.plusSeconds(random.nextInt(5_000)));
            lane.lost = true;
        } else if (what == 5 && lane.lost) {
            lane.said.add(says.setsClock(StoreFixture.NOW.plusSeconds(random.nextInt(40 * 86_400))));
            lane.lost = false;
        } else if (what == 6) {
            lane.said.add(says.puttsOutsideAnyRun());
        } else {
            lane.station += random.nextInt(4) == 0 ? 1 : 0;
            lane.said.add(random.nextBoolean() ? says.holes(lane.run, null, lane.player, lane.station)
                    : says.misses(lane.run, null, lane.player, lane.station, random.nextInt(900)));
        }
    }

    /** Some of what a lane said comes in, and now and then a part of it never does. */
    private String hears(Lane lane) {
        int upTo = Math.min(lane.said.size(), lane.kept + 1 + random.nextInt(30));
        int lost = random.nextInt(6) == 0 ? 1 + random.nextInt(3) : 0;
        if (upTo - lane.kept <= lost) {
            return "nothing comes";
        }
        List<Batch.Missing> missing = lost == 0 ? List.of() : List.of(new Batch.Missing(lane.says.source, lane.kept + 1, lane.kept + lost,
                StoreFixture.NOW));
        keeper.commit(new Batch(arrivals(lane, lane.kept + lost, upTo), missing, List.of()));
        lane.kept = upTo;
        return "events of " + lane.says.source.journal() + " up to " + upTo + ", without " + lost;
    }

    /** What another host has heard, of which more or less is here too. */
    private String takesIn() {
        for (Lane lane : lanes) {
            if (lane.elsewhere < lane.said.size()) {
                others.commit(new Batch(arrivals(lane, lane.elsewhere, lane.said.size()), List.of(), List.of()));
                lane.elsewhere = lane.said.size();
            }
        }
        return "an import: " + takeIn(other, store);
    }

    /** All that one host has, exported and taken in by another. */
    static String takeIn(Store from, Store into) {
        ByteArrayOutputStream book = new ByteArrayOutputStream();
        try {
            JsonBook.write(LogSheets.book(from, LogFilter.ALL), book);
            return Importer.take(into, "book", Importer.Form.JSON, new ByteArrayInputStream(book.toByteArray()),
                    new Who("Ines", null, StoreFixture.NOW.toEpochMilli())).added().toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (BadRow e) {
            throw new IllegalStateException(e);
        }
    }

    private String notes() {
        NoteBook book = new NoteBook(store);
        return tried("a note", () -> {
            switch (random.nextInt(3)) {
                case 0 -> book.onPlayer(any("player"), "words", ines());
                case 1 -> book.onRun(any("run"), "words", ines());
                default -> book.onAttempt(any("attempt"), "words", ines());
            }
        });
    }

    private String staff() {
        RecordBook record = new RecordBook(store);
        PlayerBook players = new PlayerBook(store);
        int what = random.nextInt(20);
        if (what < 8) {
            return tried("voided", () -> record.voids(any("attempt"), ines()));
        }
        if (what < 12) {
            return tried("restored", () -> record.restores(any("attempt WHERE counts = 0"), ines()));
        }
        if (what < 17) {
            return tried("a run given away", () -> record.reassigns(any("run"), any("player WHERE name_key IS NOT NULL"), ines()));
        }
        return switch (what) {
            case 17 -> tried("merged", () -> players.merge(any("player"), any("player"), ines()));
            case 18 -> tried("renamed", () -> players.rename(any("player"), "Player " + random.nextInt(1_000), ines()));
            default -> tried("forgotten", () -> players.forget(any("player"), ines()));
        };
    }

    /** What the books refuse changes nothing. */
    private static String tried(String what, Runnable deed) {
        try {
            deed.run();
            return what;
        } catch (IllegalArgumentException | java.util.NoSuchElementException refused) {
            return what + ", refused";
        }
    }

    private int any(String of) {
        List<Integer> ids = store.read(h -> h.createQuery("SELECT id FROM " + of + " ORDER BY id").mapTo(Integer.class).list());
        return ids.isEmpty() ? 0 : ids.get(random.nextInt(ids.size()));
    }

    private static List<Arrival> arrivals(Lane lane, int from, int to) {
        return lane.said.subList(from, to).stream().map(event -> StoreFixture.arrival(event, StoreFixture.NOW)).toList();
    }

    private Who ines() {
        return new Who("Ines", null, StoreFixture.NOW.toEpochMilli() + random.nextInt(1_000_000));
    }
}
