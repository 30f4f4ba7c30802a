package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cupbeam.event.Answer;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Command;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Samples;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.fuzz.Fuzz;
import org.cupbeam.fuzz.Target;
import org.cupbeam.journal.Outbox;

/** Commands to a whole lane with a journal: each that can be read is answered, and what comes of it can be read too. */
public final class CommandTarget implements Target {
    private static final int A_LIFE = 200;
    private final Path folder;
    private SteppedLane lane;
    private int taken;

    public CommandTarget() throws IOException {
        folder = Fuzz.folder("lane");
        lane = newLane();
    }

    private SteppedLane newLane() throws IOException {
        Path file = Files.createTempFile(folder, "lane", ".db");
        Files.delete(file);
        return new SteppedLane(file).open();
    }

    @Override
    public String name() {
        return "command";
    }

    @Override
    public List<byte[]> seeds() {
        return Samples.commands().stream().map(CommandJson::encode).toList();
    }

    @Override
    public List<String> words() {
        return List.of("\"start\"", "\"miss\"", "\"take-back\"", "\"void\"", "\"pass\"", "\"end\"", "\"test-rolls\"", "\"finish_mm\":",
                "\"of\":\"0000000000000001\"", "\"id\":\"c-77\"", "\"expect\":\"0000000000000002\"", "50000", "1e300", "1e-300",
                "\"players\":[\"Ana\"]", "\"count\":100", "\"𝄞\"", "null", "\"on\":true", "\"by\":\"Jo\"");
    }

    @Override
    public String take(byte[] input) throws Exception {
        if (++taken % A_LIFE == 0) {
            comesBack();
        }
        try {
            Command command = CommandJson.decode(input);
            lane.outlet.answers.clear();
            assertThat(lane.agent.hear(command)).isTrue();
            lane.pass(50);
            return answered(command.id());
        } catch (BadMessage bad) {
            return bad.getMessage();
        }
    }

    private String answered(String id) throws BadMessage {
        assertThat(lane.outlet.answers).extracting(Answer::id).containsExactly(id);
        Answer answer = lane.outlet.answer();
        assertThat(CommandJson.decodeAnswer(CommandJson.encode(answer))).isEqualTo(answer);
        if (!lane.outlet.scores.isEmpty()) {
            ScoreJson.decode(ScoreJson.encode(lane.outlet.score()));
        }
        return answer.accepted() ? ACCEPTED : String.valueOf(answer.reason());
    }

    /** After its power was cut it stands where it stood, and all that it wrote reads. */
    private void comesBack() throws Exception {
        Score before = lane.outlet.scores.isEmpty() ? null : lane.outlet.score();
        for (Outbox.Row row : lane.journal.after(0, 10_000)) {
            EventJson.decode(row.payload());
        }
        lane.crash().pass(50);
        if (before != null) {
            assertThat(lane.outlet.score().players()).isEqualTo(before.players());
            assertThat(lane.outlet.score().sequence()).isEqualTo(before.sequence());
        }
        lane.close();
        lane = newLane();
    }
}
