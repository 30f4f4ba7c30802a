package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.ScriptedLane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExchangeRoutesTest {
    private static final String FORMULA = "=HYPERLINK(\"http://x\"),\n\"Bo\"";

    @TempDir
    Path here;
    @TempDir
    Path elsewhere;
    private Pages pages;
    private Pages other;

    @BeforeEach
    void open() throws IOException {
        pages = new Pages(here);
        other = new Pages(elsewhere);
        ScriptedLane lane = new ScriptedLane("one", "j1");
        String hostile = FORMULA.replace("\n", " ");
        pages.keep(lane.starts("r1", "d1", "Ada", 1), lane.passes(1).starts("r2", "d1", hostile, 2),
                lane.passes(10).holes("r1", "d1", "Ada", 1), lane.passes(10).misses("r1", "d1", "Ada", 2, 417),
                lane.voids(4, "Kim", "a dog ran by"), lane.passes(10).misses("r2", "d1", hostile, 1, 1_200),
                lane.passes(10).puttsOutsideAnyRun(), lane.ends("r1", "d1", "Ada", 1, 1, 1, Double.NaN),
                lane.ends("r2", "d1", hostile, 0, 1, 0, 1_200), lane.endsDuel("d1", "Ada"));
        pages.done("POST", "/api/run/1/notes", "{\"words\": \"eyes up, \\\"quoted\\\"\\nand on a second line\"}");
        pages.done("PUT", "/api/player/1", "{\"name\": \"Ada\", \"hand\": \"left\", \"units\": \"feet\"}");
    }

    @AfterEach
    void close() {
        pages.close();
        other.close();
    }

    @Test
    void theWholeRecordGoesToAnotherStudioAndIsTheSameThere() {
        String file = export(pages, "/api/record/export?as=json");
        JsonNode came = Pages.json(other.ask("POST", "/api/import", file));
        assertThat(came.at("/added/runs").asInt()).isEqualTo(2);
        assertThat(came.at("/added/attempts").asInt()).isEqualTo(4);
        assertThat(came.get("left_out").asInt()).as("%s", came).isZero();

        for (String sheet : new String[] {"players", "notes"}) {
            assertThat(table(other, sheet)).isEqualTo(table(pages, sheet));
        }
        assertThat(record(other)).isEqualTo(record(pages));
    }

    @Test
    void theSameFileDoesNoHarmTwice() {
        String file = export(pages, "/api/record/export?as=json");
        other.done("POST", "/api/import", file);
        String once = export(other, "/api/runs/export?as=json");

        JsonNode again = Pages.json(other.ask("POST", "/api/import", file));
        assertThat(again.at("/added/attempts").isMissingNode()).isTrue();
        assertThat(again.at("/known/attempts").asInt()).isEqualTo(4);
        assertThat(export(other, "/api/runs/export?as=json")).isEqualTo(once);
    }

    @Test
    void whatIsListedGoesOutAsCsvWithFormulasDefused() {
        String csv = export(pages, "/api/runs/export?as=csv&sheet=runs&from=2026-11-25");

        assertThat(csv.split("\r\n")).hasSize(3);
        assertThat(csv).contains("\"'=HYPERLINK(\"\"http://x\"\"), \"\"Bo\"\"\"");
        assertThat(export(pages, "/api/runs/export?as=csv&sheet=runs&from=2026-11-26").split("\r\n"))
                .as("the filter holds for the file").hasSize(1);
        assertThat(export(pages, "/api/runs/export?as=csv&sheet=attempts&player=1").split("\r\n")).hasSize(3);
    }

    @Test
    void aTableComesBackFromCsv() {
        for (String sheet : new String[] {"runs", "attempts"}) {
            String csv = export(pages, "/api/runs/export?as=csv&sheet=" + sheet);
            HttpResponse<byte[]> answer = other.ask("POST", "/api/import", "text/csv", csv);
            assertThat(answer.statusCode()).as(Pages.text(answer)).isEqualTo(200);
        }
        assertThat(record(other)).isEqualTo(record(pages));
    }

    @Test
    void aFileThatIsNoneIsRefusedWithWhatWouldDoAndRowsThatMakeNoSenseAreLeftOutAndSaid() {
        for (String file : new String[] {"{}", "[]", "nonsense", "{\"cupbeam_export\": 99}"}) {
            HttpResponse<byte[]> answer = other.ask("POST", "/api/import", file);
            assertThat(answer.statusCode()).as(file).isEqualTo(400);
            assertThat(Pages.json(answer).get("error").asText()).contains("the file");
        }
        String file = export(pages, "/api/runs/export?as=json").replaceFirst("\"finish_mm\":417", "\"finish_mm\":\"near\"");
        JsonNode came = Pages.json(other.ask("POST", "/api/import", file));
        assertThat(came.get("left_out").asInt()).isEqualTo(1);
        assertThat(came.at("/problems/0").asText()).contains("finish_mm").contains("give a number");
        assertThat(came.at("/added/attempts").asInt()).isEqualTo(3);
    }

    /** All runs and attempts, but for the numbers that each store gives its players. */
    private static JsonNode record(Pages from) {
        JsonNode record = Pages.json(from.ask("GET", "/api/runs/export?as=json", null));
        for (String sheet : new String[] {"runs", "attempts"}) {
            assertThat(record.get(sheet)).isNotEmpty();
            record.get(sheet).forEach(row -> ((ObjectNode) row).remove("player_number"));
        }
        return record;
    }

    private static String table(Pages from, String sheet) {
        return export(from, "/api/record/export?as=csv&sheet=" + sheet);
    }

    private static String export(Pages from, String path) {
        HttpResponse<byte[]> answer = from.ask("GET", path, null);
        assertThat(answer.statusCode()).as(path).isEqualTo(200);
        return Pages.text(answer);
    }
}
