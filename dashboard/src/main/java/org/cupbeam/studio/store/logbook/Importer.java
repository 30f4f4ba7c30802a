package org.cupbeam.studio.store.logbook;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.cupbeam.studio.store.LateEntries;
import org.cupbeam.studio.store.RecordBook;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.Who;
import org.cupbeam.studio.store.sheet.BadRow;
import org.cupbeam.studio.store.sheet.Cells;
import org.cupbeam.studio.store.sheet.CsvSheet;
import org.cupbeam.studio.store.sheet.JsonBook;
import org.cupbeam.studio.store.sheet.RowReader;

/**
 * Takes in what was exported here or in another studio. What is there already stays as it is, so the same file does no
 * harm twice; a row that makes no sense is left out, and said.
 */
public final class Importer {
    /**
     * What came of a file.
     *
     * @param added    rows by table
     * @param known    rows that were there already, by table
     * @param leftOut  rows that made no sense
     * @param problems what was wrong with the first of them
     */
    public record Report(Map<String, Integer> added, Map<String, Integer> known, int leftOut, List<String> problems) {
        public Report {
            added = Map.copyOf(added);
            known = Map.copyOf(known);
            problems = List.copyOf(problems);
        }
    }

    /** A form of file. */
    public enum Form { CSV, JSON }

    private record Row(String sheet, Cells cells) {
    }

    private static final int AT_A_TIME = 1_000;
    private static final int MOST_PROBLEMS = 50;

    private final Store store;
    private final LateEntries.Nobodies nobodies = new LateEntries.Nobodies();
    private final Map<String, Integer> added = new TreeMap<>();
    private final Map<String, Integer> known = new TreeMap<>();
    private final List<String> problems = new ArrayList<>();
    private final List<Row> waiting = new ArrayList<>();
    private int leftOut;

    private Importer(Store store) {
        this.store = store;
    }

    /**
     * Takes a file in, a thousand rows in a transaction.
     *
     * @param name of the file, for errors
     * @throws BadRow where the file is no export at all, from some row on; what came before is in
     */
    public static Report take(Store store, String name, Form form, InputStream from, Who who) throws IOException, BadRow {
        Importer importer = new Importer(store);
        try {
            RowReader reader = importer::row;
            switch (form) {
                case CSV -> CsvSheet.read(name, from, reader);
                case JSON -> JsonBook.read(name, from, reader);
            }
        } finally {
            importer.enter();
            if (!importer.added.isEmpty()) {
                new RecordBook(store).imported(name + " " + importer.added, who);
            }
        }
        return new Report(importer.added, importer.known, importer.leftOut, importer.problems);
    }

    private void row(String sheetOrNull, Cells cells) throws BadRow {
        String sheet = sheetOrNull == null ? sheet(cells) : sheetOrNull;
        if (EnteredRows.SHEETS.contains(sheet)) {
            waiting.add(new Row(sheet, cells));
        }
        if (waiting.size() >= AT_A_TIME) {
            enter();
        }
    }

    private void enter() {
        List<Row> rows = List.copyOf(waiting);
        waiting.clear();
        if (rows.isEmpty()) {
            return;
        }
        List<String> wrong = store.write(h -> {
            EnteredRows entries = new EnteredRows(store, h, new LateEntries(store, h, nobodies));
            List<String> refused = new ArrayList<>();
            for (Row each : rows) {
                try {
                    (entries.enter(each.sheet(), each.cells()) ? added : known).merge(each.sheet(), 1, Integer::sum);
                } catch (BadRow e) {
                    refused.add(e.getMessage());
                }
            }
            entries.done();
            return refused;
        });
        leftOut += wrong.size();
        wrong.stream().limit(MOST_PROBLEMS - problems.size()).forEach(problems::add);
    }

    /** Which table a file without a name of its own is. */
    private static String sheet(Cells cells) throws BadRow {
        return EnteredRows.SHEETS.stream().filter(sheet -> cells.values().containsKey(EnteredRows.mark(sheet))).findFirst()
                .orElseThrow(() -> new BadRow(cells.where() + ": no table that is known here has such columns; give one "
                        + "that was exported: " + EnteredRows.SHEETS));
    }
}
