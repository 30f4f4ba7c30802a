package org.cupbeam.studio.store.sheet;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvGenerator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.CharConversionException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Tables as comma-separated values (RFC 4180), in UTF-8, the first line the columns' names. An empty cell is null. A
 * text that a spreadsheet would take for a formula has an apostrophe before it, which is taken off again when it is read.
 */
public final class CsvSheet {
    /** The media type. */
    public static final String CONTENT_TYPE = "text/csv; charset=utf-8";
    private static final int LONGEST_CELL = 10_000;
    private static final Pattern FORMULA = Pattern.compile("(?s)'*[=+\\-@\\t\\r].*");
    private static final CsvMapper CSV = CsvMapper.builder(CsvFactory.builder().streamReadConstraints(
                    StreamReadConstraints.builder().maxStringLength(LONGEST_CELL).build()).build())
            .enable(CsvParser.Feature.SKIP_EMPTY_LINES).build();

    private CsvSheet() {
    }

    /** Writes a table; does not close where to. */
    public static void write(Sheet sheet, OutputStream to) throws IOException {
        CsvSchema.Builder schema = CsvSchema.builder().setUseHeader(true).setLineSeparator("\r\n");
        sheet.columns().forEach(schema::addColumn);
        try (CsvGenerator out = (CsvGenerator) CSV.writer(schema.build()).createGenerator(new Unclosed(to))) {
            for (List<Object> row : sheet.rows()) {
                row(out, sheet.columns(), row);
            }
        }
    }

    private static void row(CsvGenerator out, List<String> columns, List<Object> row) throws IOException {
        out.writeStartObject();
        for (int i = 0; i < columns.size(); i++) {
            Object cell = row.get(i);
            out.writeFieldName(columns.get(i));
            if (cell == null) {
                out.writeNull();
            } else if (cell instanceof Double number) {
                out.writeNumber(BigDecimal.valueOf(number).stripTrailingZeros().toPlainString());
            } else if (cell instanceof String text) {
                out.writeString(guarded(text));
            } else {
                out.writeString(cell.toString());
            }
        }
        out.writeEndObject();
    }

    /**
     * Reads a table row by row.
     *
     * @param name what to call it in errors
     * @throws BadRow where this is no table
     */
    public static void read(String name, InputStream from, RowReader reader) throws IOException, BadRow {
        CsvSchema schema = CsvSchema.emptySchema().withHeader().withNullValue("");
        int number = 1;
        try (MappingIterator<Map<String, String>> rows = CSV.readerFor(Map.class).with(schema).readValues(new ShortLines(from))) {
            while (rows.hasNextValue()) {
                Map<String, Object> values = new LinkedHashMap<>();
                Map<String, String> row = rows.nextValue();
                if (row.size() > Cells.MOST_COLUMNS) {
                    throw new BadRow(name + " row " + number + ": has more than " + Cells.MOST_COLUMNS + " columns; is it a table "
                            + "that was exported?");
                }
                row.forEach((column, text) -> values.put(column, text == null || text.isEmpty() ? null
                        : unguarded(text)));
                reader.row(null, new Cells(name + " row " + number, values));
                number++;
            }
        } catch (JsonProcessingException e) {
            throw new BadRow(name + " row " + number + ": " + e.getOriginalMessage() + "; give lines of values, "
                    + "separated by commas, as the export writes them");
        } catch (ShortLines.TooLong e) {
            throw new BadRow(name + " row " + number + ": has " + e.getMessage() + "; is it a table?");
        } catch (CharConversionException e) {
            throw new BadRow(name + " row " + number + ": is not text in UTF-8; save the table as UTF-8");
        }
    }

    static String guarded(String text) {
        return FORMULA.matcher(text).matches() ? "'" + text : text;
    }

    static String unguarded(String text) {
        return text.startsWith("'") && FORMULA.matcher(text).matches() ? text.substring(1) : text;
    }
}
