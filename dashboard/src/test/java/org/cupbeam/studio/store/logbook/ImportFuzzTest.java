package org.cupbeam.studio.store.logbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import org.cupbeam.fuzz.Fuzz;
import org.cupbeam.studio.store.Who;
import org.cupbeam.studio.store.sheet.JsonBook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(value = 3_600, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class ImportFuzzTest {
    @Test
    void aSpoiltExportIsTakenRowByRowAndWhatGotInCanBeExportedAgain() throws Exception {
        try (ImportTarget target = new ImportTarget()) {
            assertThat(Fuzz.of(target, 500)).as("kinds of outcome").isGreaterThan(20);
            ByteArrayOutputStream all = new ByteArrayOutputStream();
            JsonBook.write(LogSheets.book(target.store, LogFilter.ALL), all);
            Importer.Report again = Importer.take(target.store, "again", Importer.Form.JSON, new ByteArrayInputStream(all.toByteArray()),
                    new Who("Kim", null, 1));
            assertThat(again.problems()).isEmpty();
        }
    }
}
