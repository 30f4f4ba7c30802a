package org.cupbeam.studio.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;
import org.cupbeam.studio.store.sheet.CsvSheet;
import org.cupbeam.studio.store.sheet.JsonBook;
import org.cupbeam.studio.store.sheet.Sheet;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Tables as a file to keep: JSON with all of them, or CSV with one. */
final class Download {
    private static final Logger LOG = LoggerFactory.getLogger(Download.class);

    private Download() {
    }

    /**
     * Sends tables as the request has it: {@code as=json}, or {@code as=csv}, then {@code sheet=name} says which where
     * there are several. They are written while they are read, however long they are.
     *
     * @param name the file's name without an ending; whatever a file system might take amiss becomes a dash
     */
    static void send(Context ctx, String name, List<Sheet> sheets) {
        String as = ctx.queryParam("as");
        if ("json".equals(as)) {
            begin(ctx, JsonBook.CONTENT_TYPE, fileName(name) + ".json");
            write(ctx, out -> JsonBook.write(sheets, out));
        } else if ("csv".equals(as)) {
            Sheet sheet = chosen(ctx.queryParam("sheet"), sheets);
            begin(ctx, CsvSheet.CONTENT_TYPE, fileName(sheets.size() == 1 ? name : name + "-" + sheet.name()) + ".csv");
            write(ctx, out -> CsvSheet.write(sheet, out));
        } else {
            throw Refusal.badRequest("Say as=csv or as=json.");
        }
    }

    static String fileName(String name) {
        String plain = name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{Alnum}_.]+", "-").replaceAll("^[-.]+|-+$", "");
        return plain.isEmpty() ? "cupbeam" : plain.substring(0, Math.min(plain.length(), 80));
    }

    private interface Writer {
        void to(OutputStream out) throws IOException;
    }

    private static Sheet chosen(String nameOrNull, List<Sheet> sheets) {
        if (nameOrNull == null && sheets.size() == 1) {
            return sheets.get(0);
        }
        return sheets.stream().filter(sheet -> sheet.name().equals(nameOrNull)).findFirst()
                .orElseThrow(() -> Refusal.badRequest("Say which table: sheet="
                        + String.join(" or ", sheets.stream().map(Sheet::name).toList()) + "."));
    }

    private static void begin(Context ctx, String type, String file) {
        ctx.contentType(type).header("Cache-Control", "no-store")
                .header("Content-Disposition", "attachment; filename=\"" + file + "\"");
    }

    private static void write(Context ctx, Writer writer) {
        try {
            writer.to(ctx.res().getOutputStream());
        } catch (IOException e) {
            LOG.debug("a browser went away in the middle of a file: {}", e.toString());
        }
    }
}
