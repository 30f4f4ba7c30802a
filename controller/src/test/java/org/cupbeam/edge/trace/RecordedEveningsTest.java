package org.cupbeam.edge.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.cupbeam.Outside;
import org.cupbeam.edge.trace.VcdReader.Step;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** The recorded evenings that lie beside the project, where they do. */
class RecordedEveningsTest {
    @TestFactory
    Stream<DynamicTest> eachIsReadAsAPlainLineByLineReadingSaysItIs() throws IOException {
        return Files.list(Outside.reference("traces")).filter(Files::isDirectory).sorted().map(folder ->
                DynamicTest.dynamicTest(folder.getFileName().toString(), () -> {
                    Rig rig = RigFile.read(folder.resolve("rig.toml"));
                    Edges edges = new Edges(rig);
                    try (VcdReader reader = VcdReader.open(folder.resolve("trace.vcd"), rig)) {
                        assertThat(reader.drainTo(edges)).isEqualTo(Step.END);
                    }
                    assertThat(edges.all).hasSizeGreaterThan(100)
                            .isEqualTo(lineByLine(Files.readAllLines(folder.resolve("trace.vcd"))));
                }));
    }

    /** Right for these files alone, and independent of the reader. */
    private static List<String> lineByLine(List<String> lines) {
        Map<String, String> names = new HashMap<>();
        Map<String, Boolean> states = new HashMap<>();
        List<String> edges = new ArrayList<>();
        long timeNs = 0;
        for (String line : lines) {
            if (line.startsWith("$var")) {
                String[] words = line.split(" ");
                names.put(words[3], words[4]);
            } else if (line.startsWith("#")) {
                timeNs = 1000 * Long.parseLong(line.substring(1));
            } else if (line.startsWith("0") || line.startsWith("1")) {
                String name = names.get(line.substring(1));
                boolean active = line.startsWith("1");
                if (!Objects.equals(states.getOrDefault(name, false), active)) {
                    edges.add(name + (active ? " on " : " off ") + timeNs);
                }
                states.put(name, active);
            }
        }
        return edges;
    }
}
