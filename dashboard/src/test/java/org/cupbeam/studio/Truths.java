package org.cupbeam.studio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** What truly happened in a recorded evening, as the program that simulated it wrote it down. */
record Truths(List<Putt> putts) {
    /** @param finishMm where the ball stopped along the line; NaN when holed */
    record Putt(double struckS, boolean holed, double finishMm, boolean visible) {
    }

    static Truths of(Path recorded) throws IOException {
        return new Truths(Files.readAllLines(recorded.resolve("truth.csv")).stream().skip(1).map(line -> {
            String[] cells = line.split(",", -1);
            return new Putt(Double.parseDouble(cells[1]), cells[4].equals("holed"),
                    cells[5].isEmpty() ? Double.NaN : Double.parseDouble(cells[5]), cells[8].equals("1"));
        }).toList());
    }

    /** A putt, from 1 as in the file. */
    Putt putt(int number) {
        return putts.get(number - 1);
    }
}
