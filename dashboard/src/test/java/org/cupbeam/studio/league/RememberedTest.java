package org.cupbeam.studio.league;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.store.league.League;
import org.cupbeam.studio.store.league.LeagueBook.Kept;
import org.cupbeam.studio.store.league.Played;
import org.cupbeam.studio.store.league.Span;
import org.cupbeam.studio.store.sums.RunDays;
import org.junit.jupiter.api.Test;

/** What is read again of a league, and what is not. */
class RememberedTest {
    private static final League LEAGUE = new League("Autumn", DrillFile.preset("ladder"), Tags.NONE, ZoneOffset.UTC, LocalDate.of(1970, 1, 5), 3, 1,
            Set.of());
    private static final List<Span> WEEKS = IntStream.rangeClosed(1, 3).mapToObj(Weeks.of(LEAGUE)::span).toList();

    private final Remembered remembered = new Remembered();
    private final TreeMap<Long, Long> changes = new TreeMap<>();
    private final List<Integer> read = new ArrayList<>();

    @Test
    void aWeekIsReadOnceAndAgainWhenARunOfItWasWritten() {
        ask(1, 1, 1);
        assertThat(read).containsExactly(1, 2, 3);
        ask(1, 1, 1);
        assertThat(read).hasSize(3);
        changes.merge(10L, 1L, Long::sum); // 1970-01-11, the last day of week 1
        ask(1, 1, 1);
        changes.merge(11L, 1L, Long::sum);
        ask(1, 1, 1);
        assertThat(read.subList(3, read.size())).containsExactly(1, 2);
    }

    @Test
    void anotherLeagueAndOneThatWasChangedAreOthers() {
        ask(1, 1, 1);
        ask(2, 1, 1);
        ask(1, 2, 1);
        assertThat(read).hasSize(9);
    }

    @Test
    void whatWasNotAskedForLongestIsForgottenWhereThereIsTooMuch() {
        int players = Remembered.MOST / 7;
        ask(1, 1, players);
        ask(2, 1, players);
        ask(1, 1, players);
        assertThat(read).hasSize(6);
        ask(3, 1, players);
        assertThat(remembered.size()).isLessThanOrEqualTo(Remembered.MOST).isGreaterThan(Remembered.MOST / 2);
        ask(1, 1, players);
        assertThat(read).as("league 1 was asked for after league 2").hasSize(9);
    }

    private void ask(int league, int version, int players) {
        Function<Span, List<Played>> reading = span -> {
            read.add(span.number());
            return IntStream.range(0, players).mapToObj(player -> new Played(span.number(), player, "P" + player, 1, "home", "one", span.fromMs(),
                    1, 6, 1, 100, 1)).toList();
        };
        List<Week> weeks = remembered.weeks(new Kept(league, LEAGUE, version, "Kim", 0), WEEKS, new RunDays(new TreeMap<>(changes)), reading);
        assertThat(Table.of(weeks, Map.of(0, "P0")).rows().get(0).sum()).isEqualTo(new Sum(3, 3, 18, 3, 300_000));
    }
}
