package org.cupbeam.studio.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.cupbeam.studio.Tools;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every command of every document, typed in the order in which it stands, does what it should: it ends with status 0, or runs until
 * it is interrupted. The technician's guide has a test of its own ({@code TechnicianGuideIT}), which fails likewise at a command that
 * it does not run. Left out are builds, which {@code DocsTest} looks over, and what a reason stands beside.
 */
@Timeout(300)
class DocsIT {
    @TempDir
    private Path folder;

    static List<Doc> docs() {
        return Doc.all().stream().filter(doc -> !typed(doc).isEmpty()).toList();
    }

    @ParameterizedTest
    @MethodSource("docs")
    void everyCommandOfItCanBeTyped(Doc doc) throws Exception {
        try (Terminal terminal = new Terminal(folder)) {
            for (Doc.Command command : typed(doc)) {
                List.of("curl", "mosquitto_sub").stream().filter(command.words()::startsWith).forEach(Tools::path);
                String said = terminal.type(command.words());
                if (command.words().contains(" replay ")) {
                    assertThat(said.lines()).as("%s line %s", doc, command.line()).hasSizeGreaterThan(5)
                            .allMatch(line -> line.contains("\"finish_mm\"") || line.contains("_ended\""));
                } else if (!command.words().contains(" -o ")) {
                    assertThat(said).as("%s line %s: %s", doc, command.line(), command.words()).isNotBlank();
                }
            }
            isNamedInTheReference();
        }
    }

    /** Whatever came into the folder of all data. */
    private void isNamedInTheReference() throws IOException {
        String reference = Doc.named("docs/reference.md").text();
        try (Stream<Path> files = Files.list(folder.resolve("cupbeam-data"))) {
            assertThat(files.map(each -> each.getFileName().toString().replaceFirst("-(?:wal|shm)$", "")
                    .replaceFirst("^[a-z0-9-]+\\.[a-z0-9-]+\\.db(\\.lock)?$", "STUDIO.LANE.db$1").replaceFirst("^sqlite-.*", "sqlite-…")))
                    .allSatisfy(name -> assertThat(reference.contains("`DATA/" + name + "`")).as(name).isTrue());
        }
    }

    private static List<Doc.Command> typed(Doc doc) {
        return doc.name().equals("docs/technician.md") ? List.of() : doc.commands().stream()
                .filter(each -> each.reason() == null && !each.words().startsWith("mvn ")).toList();
    }
}
