package org.cupbeam.studio.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.cupbeam.studio.docs.Asked.Filled;
import org.cupbeam.studio.docs.LogLogChart.Axis;
import org.cupbeam.studio.docs.LogLogChart.Line;
import org.cupbeam.studio.docs.LogLogChart.Point;
import org.cupbeam.studio.docs.LogLogChart.Style;
import org.cupbeam.studio.docs.LogLogChart.Tick;
import org.junit.jupiter.api.Test;

/** What pages' questions cost as the store grows: tables and picture say what was measured. */
class HistoryPlotTest {
    private static final double BAR_MS = 100;
    private static final Axis ATTEMPTS = new Axis("attempts in the store", 0.8e6, 65e6, List.of(new Tick(1e6, "1 million"), new Tick(2e6, "2"),
            new Tick(5e6, "5"), new Tick(10e6, "10"), new Tick(20e6, "20"), new Tick(50e6, "50")));
    private static final Axis MS = new Axis("a page's question, p99, ms", 0.5, 2_000, Stream.of(1, 3, 10, 30, 100, 300, 1_000)
            .map(each -> new Tick(each, String.valueOf(each))).toList());

    private final Map<Filled, List<Asked>> measured = Asked.in(Doc.ROOT.resolve("docs/history.csv"));

    HistoryPlotTest() throws IOException {
    }

    @Test
    void eachStoreWasAskedTheSame() {
        assertThat(largest("SQLite")).isGreaterThanOrEqualTo(5_000_000);
        assertThat(largest("PostgreSQL")).isGreaterThanOrEqualTo(50_000_000);
        assertThat(kinds()).hasSizeGreaterThan(50);
        assertThat(measured.values()).allSatisfy(each -> assertThat(each).extracting(Asked::what).isEqualTo(kinds()));
    }

    @Test
    void theSummaryIsOfWhatWasMeasured() throws IOException {
        List<String> lines = new ArrayList<>(List.of("| store | attempts | load before | p50 of the middle kind, ms | its p99 | p99 of the slowest"
                + " | that is | kinds over " + (int) BAR_MS + " ms |", "| --- | --- | --- | --- | --- | --- | --- | --- |"));
        measured.forEach((filled, all) -> {
            List<Asked> asked = barred(all);
            lines.add(String.format(Locale.ROOT, "| %s | %,d | %.1f | %.1f | %.1f | %.1f | %s | %d of %d |", filled.engine(), filled.attempts(),
                    asked.get(0).load(), median(asked, Asked::p50Ms), median(asked, Asked::p99Ms), slowest(asked).p99Ms(),
                    slowest(asked).what(), asked.stream().filter(each -> each.p99Ms() > BAR_MS).count(), asked.size()));
        });
        Tables.holds(Doc.ROOT.resolve("docs/scale.md"), "history", lines);
    }

    @Test
    void eachKindIsTold() throws IOException {
        List<String> lines = new ArrayList<>();
        StringBuilder head = new StringBuilder("| p50 / p99, ms |");
        measured.keySet().forEach(each -> head.append(' ').append(each.engine()).append(", ").append(each.size()).append(" |"));
        lines.add(head.toString());
        lines.add("| --- |" + " --- |".repeat(measured.size()));
        for (int i = 0; i < kinds().size(); i++) {
            StringBuilder row = new StringBuilder("| " + kinds().get(i) + " |");
            for (List<Asked> all : measured.values()) {
                Asked each = all.get(i);
                boolean over = each.p99Ms() > BAR_MS && !each.hasAnotherBar();
                row.append(String.format(Locale.ROOT, over ? " %.1f / **%.1f** |" : " %.1f / %.1f |", each.p50Ms(), each.p99Ms()));
            }
            lines.add(row.toString());
        }
        Tables.holds(Doc.ROOT.resolve("docs/performance.md"), "asked", lines);
    }

    @Test
    void thePictureShowsHowTheyGrow() throws IOException {
        List<Line> lines = List.of(line("SQLite, slowest kind", "#00527a", Style.SOLID, "SQLite", each -> slowest(each).p99Ms()),
                line("PostgreSQL, slowest kind", "#a35200", Style.SOLID, "PostgreSQL", each -> slowest(each).p99Ms()),
                line("SQLite, middle kind", "#00527a", Style.DASHED, "SQLite", each -> median(each, Asked::p99Ms)),
                line("PostgreSQL, middle kind", "#a35200", Style.DASHED, "PostgreSQL", each -> median(each, Asked::p99Ms)));
        Tables.holds(Doc.ROOT.resolve("docs/pictures/history.svg"),
                new LogLogChart("What a page's question costs as the store grows", ATTEMPTS, MS, BAR_MS, lines).svg());
    }

    private List<String> kinds() {
        return measured.values().iterator().next().stream().map(Asked::what).toList();
    }

    private long largest(String engine) {
        return measured.keySet().stream().filter(each -> each.engine().equals(engine)).mapToLong(Filled::attempts).max().orElseThrow();
    }

    private Line line(String name, String colour, Style style, String engine, ToDoubleFunction<List<Asked>> y) {
        return new Line(name, colour, style, measured.entrySet().stream().filter(each -> each.getKey().engine().equals(engine))
                .map(each -> new Point(each.getKey().attempts(), y.applyAsDouble(barred(each.getValue()))))
                .sorted(Comparator.comparingDouble(Point::x)).toList());
    }

    private static List<Asked> barred(List<Asked> all) {
        return all.stream().filter(each -> !each.hasAnotherBar()).toList();
    }

    private static Asked slowest(List<Asked> asked) {
        return asked.stream().max(Comparator.comparingDouble(Asked::p99Ms)).orElseThrow();
    }

    private static double median(List<Asked> asked, ToDoubleFunction<Asked> ms) {
        double[] sorted = asked.stream().mapToDouble(ms).sorted().toArray();
        return sorted[sorted.length / 2];
    }
}
