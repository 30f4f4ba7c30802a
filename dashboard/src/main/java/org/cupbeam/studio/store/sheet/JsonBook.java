package org.cupbeam.studio.store.sheet;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.CharConversionException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Tables as one JSON object: {@code {"cupbeam_export": 1, "runs": [{"lane": "north", …}, …], …}}, a row a line.
 */
public final class JsonBook {
    /** The media type. */
    public static final String CONTENT_TYPE = "application/json; charset=utf-8";
    private static final String MARK = "cupbeam_export";
    private static final int VERSION = 1;
    private static final int LONGEST_TEXT = 10_000;
    private static final JsonFactory JSON = JsonFactory.builder().streamReadConstraints(StreamReadConstraints.builder()
            .maxStringLength(LONGEST_TEXT).maxNestingDepth(10).build()).build();
    private static final String REMEDY = "give a file that was exported as JSON";

    private JsonBook() {
    }

    /** Writes tables; does not close where to. */
    public static void write(List<Sheet> sheets, OutputStream to) throws IOException {
        try (JsonGenerator out = JSON.createGenerator(new Unclosed(to))) {
            out.writeStartObject();
            out.writeNumberField(MARK, VERSION);
            for (Sheet sheet : sheets) {
                out.writeArrayFieldStart(sheet.name());
                for (List<Object> row : sheet.rows()) {
                    out.writeRaw('\n');
                    row(out, sheet.columns(), row);
                }
                out.writeEndArray();
            }
            out.writeEndObject();
            out.writeRaw('\n');
        }
    }

    private static void row(JsonGenerator out, List<String> columns, List<Object> row) throws IOException {
        out.writeStartObject();
        for (int i = 0; i < columns.size(); i++) {
            Object cell = row.get(i);
            out.writeFieldName(columns.get(i));
            if (cell == null) {
                out.writeNull();
            } else if (cell instanceof Boolean flag) {
                out.writeBoolean(flag);
            } else if (cell instanceof Double number) {
                out.writeNumber(BigDecimal.valueOf(number).stripTrailingZeros().toPlainString());
            } else if (cell instanceof Number whole) {
                out.writeNumber(whole.longValue());
            } else {
                out.writeString(cell.toString());
            }
        }
        out.writeEndObject();
    }

    /**
     * Reads tables row by row. Keys that are no tables are passed over.
     *
     * @param name what to call the file in errors
     * @throws BadRow where this is no such file
     */
    public static void read(String name, InputStream from, RowReader reader) throws IOException, BadRow {
        try (JsonParser in = JSON.createParser(from)) {
            require(in.nextToken() == JsonToken.START_OBJECT && MARK.equals(in.nextFieldName()), name,
                    "does not begin with \"" + MARK + "\"");
            require(in.nextToken() == JsonToken.VALUE_NUMBER_INT && in.getIntValue() == VERSION, name,
                    "is of a version that is not known here");
            for (String sheet = in.nextFieldName(); sheet != null; sheet = in.nextFieldName()) {
                if (in.nextToken() == JsonToken.START_ARRAY) {
                    sheet(in, name, sheet, reader);
                } else {
                    in.skipChildren();
                }
            }
        } catch (JsonProcessingException e) {
            throw new BadRow(name + ": " + e.getOriginalMessage() + "; " + REMEDY);
        } catch (CharConversionException e) {
            throw new BadRow(name + ": is not text in UTF-8; " + REMEDY);
        }
    }

    private static void sheet(JsonParser in, String name, String sheet, RowReader reader) throws IOException, BadRow {
        int number = 1;
        while (in.nextToken() == JsonToken.START_OBJECT) {
            String where = name + " " + sheet + " " + number;
            reader.row(sheet, new Cells(where, values(in, where)));
            number++;
        }
        require(in.currentToken() == JsonToken.END_ARRAY, name, sheet + " " + number + " is no object");
    }

    private static Map<String, Object> values(JsonParser in, String where) throws IOException, BadRow {
        Map<String, Object> values = new LinkedHashMap<>();
        for (String column = in.nextFieldName(); column != null; column = in.nextFieldName()) {
            require(values.size() < Cells.MOST_COLUMNS, where, "has more than " + Cells.MOST_COLUMNS + " columns");
            JsonToken token = in.nextToken();
            if (token.isStructStart()) {
                in.skipChildren();
            } else if (token == JsonToken.VALUE_TRUE || token == JsonToken.VALUE_FALSE) {
                values.put(column, in.getBooleanValue());
            } else {
                values.put(column, token == JsonToken.VALUE_NULL ? null : in.getText());
            }
        }
        return values;
    }

    private static void require(boolean holds, String name, String otherwise) throws BadRow {
        if (!holds) {
            throw new BadRow(name + ": " + otherwise + "; " + REMEDY);
        }
    }
}
