package org.cupbeam.studio.docs;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * How long a host took to answer one kind of question of its pages, with a store of some size: a line of docs/history.csv, which
 * the benchmark adds to.
 *
 * @param load of the computer, a minute's, before the first question
 */
record Asked(Filled filled, double load, String what, double p50Ms, double p99Ms) {
    /** A store. */
    record Filled(String engine, long attempts) {
        String size() {
            double millions = attempts / 1e6;
            return String.format(Locale.ROOT, millions < 10 ? "%.1f M" : "%.0f M", millions);
        }
    }

    /** Insight works out a player's putts anew, and has a bar of its own. */
    boolean hasAnotherBar() {
        return what.startsWith("(");
    }

    /** Stores and kinds in order of their lines; what was measured again counts as it was last. */
    static Map<Filled, List<Asked>> in(Path csv) throws IOException {
        Map<List<Object>, Asked> last = new LinkedHashMap<>();
        try (MappingIterator<Map<String, String>> rows = new CsvMapper().readerForMapOf(String.class)
                .with(CsvSchema.emptySchema().withHeader()).readValues(csv.toFile())) {
            while (rows.hasNext()) {
                Asked each = of(rows.next());
                last.put(List.of(each.filled, each.what), each);
            }
        }
        Map<Filled, List<Asked>> all = new LinkedHashMap<>();
        last.values().forEach(each -> all.computeIfAbsent(each.filled, any -> new ArrayList<>()).add(each));
        return all;
    }

    private static Asked of(Map<String, String> row) {
        return new Asked(new Filled(row.get("engine"), Long.parseLong(row.get("attempts"))), Double.parseDouble(row.get("load")),
                row.get("what"), Double.parseDouble(row.get("p50_ms")), Double.parseDouble(row.get("p99_ms")));
    }
}
