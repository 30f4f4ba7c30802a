package org.cupbeam.studio.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.cupbeam.studio.docs.LogLogChart.Axis;
import org.cupbeam.studio.docs.LogLogChart.Line;
import org.cupbeam.studio.docs.LogLogChart.Point;
import org.cupbeam.studio.docs.LogLogChart.Style;
import org.cupbeam.studio.docs.LogLogChart.Tick;
import org.junit.jupiter.api.Test;

/** How many lanes a host bears: the picture in docs/scale.md shows the page's own table. */
class FleetPlotTest {
    private static final Path PAGE = Doc.ROOT.resolve("docs/scale.md");
    private static final double BAR_MS = 250;
    private static final Pattern HEAD = Pattern.compile("\\| lanes \\| events a second \\| p50, ms \\| p99, ms \\| worst, ms \\|.*");
    private static final Axis LANES = new Axis("lanes, 30 putts a minute each", 20, 2_200, Stream.of(25, 50, 100, 200, 400, 800, 1_600)
            .map(each -> new Tick(each, String.valueOf(each))).toList());
    private static final Axis MS = new Axis("from a putt's event to its score on the board, ms", 0.5, 3_000,
            Stream.of(1, 3, 10, 30, 100, 300, 1_000).map(each -> new Tick(each, String.valueOf(each))).toList());

    @Test
    void thePictureShowsTheTable() throws IOException {
        List<double[]> rows = Files.readAllLines(PAGE).stream().dropWhile(line -> !HEAD.matcher(line).matches()).skip(2)
                .takeWhile(line -> line.startsWith("| ")).map(FleetPlotTest::numbers).toList();
        assertThat(rows).hasSizeGreaterThan(4);
        List<Line> lines = List.of(line("worst", "#6b6b6b", Style.DASHED, rows, 4), line("p99", "#00527a", Style.SOLID, rows, 3),
                line("p50", "#a35200", Style.SOLID, rows, 2));
        Tables.holds(Doc.ROOT.resolve("docs/pictures/fleet.svg"),
                new LogLogChart("One host, PostgreSQL and Mosquitto on two processors", LANES, MS, BAR_MS, lines).svg());
    }

    private static double[] numbers(String row) {
        return Stream.of(row.split("\\|")).map(String::strip).filter(cell -> !cell.isEmpty())
                .mapToDouble(cell -> Double.parseDouble(cell.replace(",", ""))).toArray();
    }

    private static Line line(String name, String colour, Style style, List<double[]> rows, int column) {
        return new Line(name, colour, style, rows.stream().map(row -> new Point(row[0], row[column])).toList());
    }
}
