package org.cupbeam.studio.usage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.cupbeam.studio.usage.OpeningHours.Open;
import org.cupbeam.studio.usage.OpeningHours.Span;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class OpeningHoursTest {
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    @Test
    void readsDaysRangesAndBreaks() {
        OpeningHours hours = OpeningHours.parse("Tue-Fri 12:00-22:00; sat 15:00-20:00, 10:00-14:00");

        assertThat(hours.on(DayOfWeek.MONDAY)).isEmpty();
        assertThat(hours.on(DayOfWeek.FRIDAY)).containsExactly(new Span(720, 1320));
        assertThat(hours.on(DayOfWeek.SATURDAY)).containsExactly(new Span(600, 840), new Span(900, 1200));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "mon-sun 09:00-21:00 | mon-sun 09:00-21:00",
        "sat-mon 8:00-24:00 | mon 08:00-24:00; sat-sun 08:00-24:00",
        "wed 10:00-12:00,13:00-14:00; thu 10:00-12:00 | wed 10:00-12:00, 13:00-14:00; thu 10:00-12:00",
        "'' | ''"})
    void writesWhatReadsAsTheSame(String text, String written) {
        OpeningHours hours = OpeningHours.parse(text);

        assertThat(hours.text()).isEqualTo(written);
        assertThat(OpeningHours.parse(hours.text())).isEqualTo(hours);
    }

    @ParameterizedTest
    @ValueSource(strings = {"tomorrow", "mon 12-14", "mon 14:00-12:00", "mon 12:00-25:00", "mun 12:00-14:00",
        "mon 12:00-14:00; mon 13:00-15:00", "mon 12:00-14:00, 14:00-15:00"})
    void saysWhatIsWrongAndWhatWouldDo(String text) {
        assertThatThrownBy(() -> OpeningHours.parse(text)).isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("; ");
    }

    @Test
    void keepsToTheClockOnTheWallWhereItIsSetBackOrForth() {
        OpeningHours nights = OpeningHours.parse("sun 00:00-06:00, 10:00-20:00");

        List<Open> back = nights.on(LocalDate.of(2026, 10, 25), BERLIN);
        List<Open> forth = nights.on(LocalDate.of(2026, 3, 29), BERLIN);

        assertThat(back).extracting(each -> Duration.between(each.from(), each.to()).toHours()).containsExactly(7L, 10L);
        assertThat(forth).extracting(each -> Duration.between(each.from(), each.to()).toHours()).containsExactly(5L, 10L);
        assertThat(back.get(1)).isEqualTo(new Open(Instant.parse("2026-10-25T09:00:00Z"),
                Instant.parse("2026-10-25T19:00:00Z")));
    }

    @Test
    void isClosedForTheLengthOfASpanThatTheClocksLeapOver() {
        OpeningHours hours = OpeningHours.parse("sun 02:00-03:00");

        assertThat(hours.on(LocalDate.of(2026, 3, 29), BERLIN)).isEmpty();
    }

    @Test
    void staysOpenUntilMidnight() {
        assertThat(OpeningHours.parse("fri 20:00-24:00").on(LocalDate.of(2026, 12, 4), BERLIN)).containsExactly(
                new Open(Instant.parse("2026-12-04T19:00:00Z"), Instant.parse("2026-12-04T23:00:00Z")));
    }
}
