package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.cupbeam.Outside;
import org.cupbeam.edge.trace.VcdReader;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Grades the tracker on evenings that an independent program simulated, with the truth beside them. */
class RecordedEveningsTest {

    @ParameterizedTest
    @ValueSource(strings = {"clean-standard", "busy-standard", "busy-full", "busy-gate", "busy-struck", "uphill-full",
        "downhill-standard"})
    void everyPuttOfTheEveningIsReportedAsItWas(String evening) throws Exception {
        Path folder = Outside.reference("traces/" + evening);
        Rig rig = RigFile.read(folder.resolve("rig.toml"));

        Grade grade = new Grade(rig.limitMm(), rig.channelOf(Channel.Kind.STRIKE) >= 0).add(truth(folder.resolve("truth.csv")), track(rig, folder));

        System.out.println(evening + ": " + grade);
        grade.assertNothingWrong();
        if (evening.endsWith("standard") || evening.endsWith("full")) {
            assertThat(grade.errorMm(0.5)).as("median finish error").isLessThanOrEqualTo(4.5);
            assertThat(grade.errorMm(0.9)).as("90th percentile of finish errors").isLessThanOrEqualTo(21);
        }
    }

    private static List<Attempt> track(Rig rig, Path folder) throws Exception {
        List<Attempt> attempts = new ArrayList<>();
        Tracker tracker = new Tracker(rig, attempts::add);
        try (VcdReader reader = VcdReader.open(folder.resolve("trace.vcd"), rig)) {
            reader.drainTo(tracker);
            tracker.advance(reader.timeNs());
        }
        tracker.end();
        return attempts;
    }

    private static List<TruePutt> truth(Path csv) throws Exception {
        List<String> lines = Files.readAllLines(csv);
        Map<String, Integer> column = new HashMap<>();
        String[] names = lines.get(0).split(",");
        for (int i = 0; i < names.length; i++) {
            column.put(names[i], i);
        }
        return lines.stream().skip(1).map(line -> line.split(",", -1)).map(row -> new TruePutt(
                Double.parseDouble(row[column.get("struck_s")]), Double.parseDouble(row[column.get("ended_s")]),
                row[column.get("outcome")].equals("holed"),
                row[column.get("finish_mm")].isEmpty() ? Double.NaN : Double.parseDouble(row[column.get("finish_mm")]),
                row[column.get("overshoot")].equals("1"), row[column.get("visible")].equals("1"),
                row[column.get("rim")].equals("1"), false)).toList();
    }
}
