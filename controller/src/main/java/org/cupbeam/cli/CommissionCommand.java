package org.cupbeam.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.cupbeam.commission.Course;
import org.cupbeam.commission.Drawn;
import org.cupbeam.commission.Found;
import org.cupbeam.commission.Wanted;
import org.cupbeam.edge.practice.PracticeBench;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.Sensing;
import org.cupbeam.edge.practice.Surface;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Channel.Pull;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.file.BadFileException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Leads through a new lane on a terminal, or through the check of one that is there. */
@Command(name = "commission", mixinStandardHelpOptions = true, description = {
    "Leads through a new lane: which pin each sensor hangs on and which way round, whether a quiet minute is quiet, where the"
        + " beams stand by balls rolled through them; then writes the rig file.",
    "A running lane holds its pins: stop it first. Ctrl-C leaves everything as it was."},
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:done, and nothing is open", "1:ended before the end, or something is wrong with the lane",
            "2:a file or an option makes no sense"})
final class CommissionCommand implements Callable<Integer> {
    private static final int LINE_MAX = 53;
    private static final int PIN_FIRST = 4;
    private static final int PIN_LAST = 27;
    /** The serial console's, which a system may be talking on. */
    private static final List<Integer> CONSOLE = List.of(14, 15);

    @Option(names = "--rig", paramLabel = "RIG.toml", description = "the rig file to be written; ${DEFAULT-VALUE}")
    private Path file = Path.of("rig.toml");

    @Option(names = "--check", paramLabel = "RIG.toml", description = "check the lane that this rig file describes, and write nothing")
    private Path check;

    @Option(names = "--sensors", paramLabel = "KIND", description = "gate, struck, standard or full, or the sensors' names with commas"
            + " between, beams in the order in which a putt comes to them; ${DEFAULT-VALUE}")
    private String sensors = "full";

    @Option(names = "--pins", split = ",", paramLabel = "GPIO", description = "the SoC's lines to watch; 4 to 27 but 14 and 15 where"
            + " nothing is said")
    private List<Integer> pins;

    @Option(names = "--lamp", paramLabel = "GPIO", description = "the lamp's line, which is not watched")
    private Integer lamp;

    @Option(names = "--pull", paramLabel = "HOW", description = "the resistor asked of each pin: up, down or off; ${DEFAULT-VALUE}")
    private Pull pull = Pull.UP;

    @Option(names = "--practice", description = "try it on a simulated lane, whose hands do at Enter what is asked")
    private boolean practice;

    @Option(names = "--seed", paramLabel = "NUMBER", description = "the same number simulates the same lane")
    private long seed = System.nanoTime();

    private Dialogue dialogue;
    private Course course;
    private String draft;
    private boolean written;

    @Override
    public Integer call() throws Exception {
        PrintWriter out = new PrintWriter(new OutputStreamWriter(System.out, StandardCharsets.UTF_8), true);
        BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        Rig known = check == null ? null : read(check);
        if (known == null) {
            RigDraft.tryOut(file);
        }
        List<Wanted> wanted = known == null ? wanted() : List.of();
        List<Integer> gpios = known == null ? pins() : known.channels().stream().map(Channel::gpio).toList();
        try (Bench bench = bench(known, gpios)) {
            dialogue = new Dialogue(bench, in, out);
            course = known == null ? Course.ofNewLane(gpios, wanted, dialogue::say)
                    : Course.check(gpios, found(known), dialogue::say);
            if (practice) {
                out.println("A simulated lane: Enter has its hands do what is asked; help says what else can be typed.");
            }
            dialogue.run(course, typed -> known == null ? write(typed) : judge(known));
        } catch (UncheckedIOException unwritable) {
            throw unwritable.getCause();
        }
        return written && course.open().isEmpty() ? 0 : 1;
    }

    private Rig read(Path existing) throws Refusal {
        try {
            return RigFile.read(existing);
        } catch (BadFileException nonsense) {
            throw new Refusal(nonsense);
        }
    }

    private List<Wanted> wanted() throws Refusal {
        try {
            return Wanted.of(sensors);
        } catch (IllegalArgumentException nonsense) {
            throw new Refusal("--sensors: " + nonsense.getMessage());
        }
    }

    private List<Integer> pins() throws Refusal {
        List<Integer> watched = new ArrayList<>(pins != null ? pins : IntStream.rangeClosed(PIN_FIRST, PIN_LAST).boxed()
                .filter(each -> !CONSOLE.contains(each)).toList());
        watched.remove(lamp);
        if (watched.isEmpty() || watched.stream().anyMatch(each -> each < 0 || each > LINE_MAX)
                || watched.stream().distinct().count() < watched.size()) {
            throw new Refusal("--pins: " + watched + " makes no sense; give numbers from 0 to " + LINE_MAX + ", each once");
        }
        return watched;
    }

    private Bench bench(Rig known, List<Integer> gpios) throws IOException {
        if (practice) {
            return Bench.practice(seed, known == null ? PracticeBench.newLane(seed)
                    : PracticeLane.clean(known).with(Surface.usual()).with(Sensing.usual()), gpios);
        }
        return Bench.board(gpios, known == null ? Collections.nCopies(gpios.size(), pull)
                : known.channels().stream().map(Channel::pull).toList());
    }

    private static List<Found> found(Rig rig) {
        return IntStream.range(0, rig.channels().size()).mapToObj(i -> {
            Channel each = rig.channels().get(i);
            return new Found(new Wanted(each.kind(), each.name()), i, each.active());
        }).toList();
    }

    /** The end of a check. */
    private boolean judge(Rig rig) {
        written = true;
        Drawn.advice(rig).forEach(each -> dialogue.say("To be considered: " + each + "."));
        course.open().forEach(each -> dialogue.say("Wrong: " + each + "."));
        dialogue.say(course.open().isEmpty() ? check + ": every sensor answers as it should." : check + ": see above.");
        return true;
    }

    /** The end of a new lane: shows its file, and asks before it writes it. */
    private boolean write(String typed) {
        if (typed == null) {
            return !show();
        }
        if (!typed.isEmpty() && !typed.equalsIgnoreCase("yes")) {
            dialogue.say("yes writes " + file + "; back goes a step back; quit leaves all as it was.");
            return false;
        }
        if (draft == null) {
            dialogue.say("There is nothing to write; back goes a step back.");
            return false;
        }
        if (typed.isEmpty() && Files.exists(file)) {
            dialogue.say(file + " is there already: yes writes over it, and keeps what was there as " + file.getFileName() + ".bak.");
            return false;
        }
        try {
            Path kept = RigDraft.write(file, draft);
            written = true;
            dialogue.say("Written: " + file + (kept == null ? "." : "; what was there is " + kept + "."));
            return true;
        } catch (IOException unwritable) {
            throw new UncheckedIOException(file + " cannot be written", unwritable);
        }
    }

    /** @return whether there is something to write */
    private boolean show() {
        try {
            Drawn drawn = course.drawn();
            Rig rig = drawn.rig(pull, lamp == null ? OptionalInt.empty() : OptionalInt.of(lamp));
            draft = drawn.text(rig);
            Rig back = RigFile.parse(file.toString(), draft);
            draft.lines().forEach(dialogue::say);
            Drawn.advice(back).forEach(each -> dialogue.say("To be considered: " + each + "."));
            course.open().forEach(each -> dialogue.say("Open: " + each + "."));
            dialogue.say("Enter writes " + file + "; back goes a step back; quit leaves all as it was.");
            return true;
        } catch (BadFileException senseless) {
            dialogue.say("What came of this is no lane:");
            senseless.problems().forEach(each -> dialogue.say(each.key() + ": " + each.wrong() + "; " + each.remedy()));
            dialogue.say("Type back, and put it right.");
            draft = null;
            return true;
        }
    }
}
