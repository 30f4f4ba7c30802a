package org.cupbeam.studio.store.logbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cupbeam.fuzz.Fuzz;
import org.cupbeam.fuzz.Target;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.Who;
import org.cupbeam.studio.store.sheet.BadRow;

/** The product's own exports, spoilt, taken in again: the first byte says whether as CSV or as JSON. */
public final class ImportTarget implements Target, AutoCloseable {
    private static final Who KIM = new Who("Kim", null, 1_800_000_000_000L);
    private final List<byte[]> seeds = new ArrayList<>();
    final Store store;

    public ImportTarget() throws IOException {
        try (Pages pages = new Pages(Fuzz.folder("export"))) {
            ScriptedLane lane = new ScriptedLane("one", "j1");
            pages.keep(lane.starts("r1", "d1", "Ada", 1), lane.passes(1).starts("r2", "d1", "=1+1", 2),
                    lane.passes(10).holes("r1", "d1", "Ada", 1), lane.passes(10).misses("r1", "d1", "Ada", 2, 417),
                    lane.voids(4, "Kim", "a dog"), lane.passes(10).misses("r2", "d1", "=1+1", 1, 1_200),
                    lane.passes(10).puttsOutsideAnyRun(), lane.ends("r1", "d1", "Ada", 1, 1, 1, Double.NaN),
                    lane.ends("r2", "d1", "=1+1", 0, 1, 0, 1_200), lane.endsDuel("d1", "Ada"));
            pages.done("POST", "/api/run/1/notes", "{\"words\": \"eyes up\\nand on\"}");
            pages.done("POST", "/api/attempt/1/void", "{\"reason\": \"a cat\"}");
            seed("j", pages, "/api/record/export?as=json");
            for (String sheet : List.of("runs", "attempts")) {
                seed("c", pages, "/api/runs/export?as=csv&sheet=" + sheet);
            }
        }
        store = Store.open(Database.file(Fuzz.folder("import").resolve("studio.db")));
    }

    private void seed(String form, Pages pages, String path) {
        seeds.add((form + Pages.text(pages.ask("GET", path, null))).getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public String name() {
        return "import";
    }

    @Override
    public List<byte[]> seeds() {
        return seeds;
    }

    @Override
    public List<String> words() {
        return List.of("\"cupbeam_export\":1", "\"runs\":[", "\"attempts\":[", "\"players\":[", "\"notes\":[", "\"changes\":[", "\"r1\"", "\"j1\"", "\"j2\"",
                "\"sequence\":", "\"name\":\"Ada\"", ",,,", "\"\"", "'=", "2026-11-25T18:00:00Z", "+999999999-12-31T23:59:59Z", "9999-12-31",
                "9223372036854775807", "1e308", "1000001", "-5", "true", "null", "\"what\":\"rescored\"", "\"restored\"", "home", "one", "1\",\"1", "\r\n");
    }

    @Override
    public String take(byte[] input) throws IOException {
        boolean csv = input.length > 0 && input[0] % 2 != 0;
        try {
            Importer.Report report = Importer.take(store, "the file", csv ? Importer.Form.CSV : Importer.Form.JSON,
                    new ByteArrayInputStream(input, Math.min(1, input.length), Math.max(0, input.length - 1)), KIM);
            assertThat(report.problems()).hasSizeLessThanOrEqualTo(50);
            assertThat(report.problems()).hasSize(Math.min(50, report.leftOut()));
            report.problems().forEach(ImportTarget::saysWhereAndWhat);
            return report.problems().isEmpty() ? ACCEPTED : report.problems().get(0);
        } catch (BadRow refused) {
            saysWhereAndWhat(refused.getMessage());
            return refused.getMessage();
        }
    }

    private static void saysWhereAndWhat(String problem) {
        assertThat(problem).matches("(?s)the file.*: .+").hasSizeLessThan(1_000);
        assertThat(problem.codePoints()).as(Arrays.toString(problem.toCharArray())).noneMatch(each -> Character.isISOControl(each) && each != '\n');
    }

    @Override
    public void close() {
        store.close();
    }
}
