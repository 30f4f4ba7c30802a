package org.cupbeam;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The hardware notes: their pins, rig files, drawings and links agree with one another and with the product. */
class HardwareNotesTest {
    private static final Path NOTES = DocTable.project("hardware-notes");
    private static final int V33 = -1;
    private static final int V5 = -2;
    private static final int GND = -3;
    /** BCM numbers of pins 1 to 40, as in the Zephyr project's device tree binding raspberrypi-40pins-header. */
    private static final int[] HEADER = {V33, V5, 2, V5, 3, GND, 4, 14, GND, 15, 17, 18, 27, GND, 22, 23, V33, 24, 10, GND,
        9, 25, 11, 8, GND, 7, 0, 1, 5, GND, 6, 12, 13, GND, 19, 16, 26, 20, GND, 21};
    private static final Pattern PIN_ROW = Pattern.compile("(?m)^\\| (\\d+) \\| (\\d+) \\| (up|down) \\| (.*) \\|$");

    private record Pin(int header, String powerOn, String use) {
    }

    private static Map<Integer, Pin> pins() throws IOException {
        Map<Integer, Pin> pins = new HashMap<>();
        PIN_ROW.matcher(Files.readString(NOTES.resolve("wiring.md"))).results().forEach(row -> pins.put(
                Integer.parseInt(row.group(1)), new Pin(Integer.parseInt(row.group(2)), row.group(3), row.group(4))));
        return pins;
    }

    static Stream<Path> drawings() throws IOException {
        try (Stream<Path> files = Files.list(NOTES.resolve("drawings"))) {
            return files.sorted().toList().stream();
        }
    }

    @Test
    void thePinTableIsTheHeaders() throws IOException {
        Map<Integer, Pin> pins = pins();

        assertThat(pins).hasSize(28);
        pins.forEach((bcm, pin) -> {
            assertThat(HEADER[pin.header - 1]).as("header pin %d", pin.header).isEqualTo(bcm);
            assertThat(pin.powerOn).as("BCM %d, BCM2835 peripherals datasheet p. 102", bcm)
                    .isEqualTo(bcm <= 8 ? "up" : "down");
        });
    }

    @ParameterizedTest
    @EnumSource
    void theExampleRigsAreThePractisedOnesOnThePinsOfTheTable(PracticeRigs rigs) throws Exception {
        Rig rig = RigFile.read(NOTES.resolve("rigs").resolve(rigs.name().toLowerCase(Locale.ROOT) + ".toml"));
        Rig practised = PracticeRigs.withPedal(rigs.level());

        assertThat(rig.stimpFt()).isEqualTo(practised.stimpFt());
        assertThat(rig.limitMm()).isEqualTo(practised.limitMm());
        assertThat(wires(rig)).containsExactlyInAnyOrderElementsOf(wires(practised));
        Map<Integer, Pin> pins = pins();
        for (Channel channel : rig.channels()) {
            assertThat(pins.get(channel.gpio()).use).as("BCM %d", channel.gpio()).isEqualTo(channel.name());
        }
        assertThat(pins.get(rig.lampGpio().orElseThrow()).use).isEqualTo("lamp");
    }

    private static List<String> wires(Rig rig) {
        List<String> wires = new ArrayList<>();
        rig.channels().forEach(each -> wires.add(each.name() + " on " + each.gpio()));
        for (Beam beam : rig.beams()) {
            wires.add(rig.channels().get(beam.channel()).name() + " at " + beam.positionMm() + ", " + beam.heightMm());
        }
        return wires;
    }

    @Test
    void theRecordedEveningsUseNoPinThatIsToBeAvoided() throws Exception {
        Map<Integer, Pin> pins = pins();
        try (Stream<Path> evenings = Files.list(Outside.reference("traces")).filter(Files::isDirectory)) {
            for (Path evening : evenings.toList()) {
                for (Channel channel : RigFile.read(evening.resolve("rig.toml")).channels()) {
                    assertThat(pins.get(channel.gpio()).use).as("%s of %s", channel.name(), evening)
                            .doesNotStartWith("avoid");
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("drawings")
    void aDrawingIsWellFormedDescribedAndDrawnOnlyFromItself(Path file) throws Exception {
        Document svg = parsed(file);

        assertThat(svg.getDocumentElement().getTagName()).isEqualTo("svg");
        for (String tag : new String[] {"title", "desc"}) {
            assertThat(svg.getElementsByTagName(tag).item(0).getTextContent()).isNotBlank();
        }
        assertThat(svg.getElementsByTagName("script").getLength() + svg.getElementsByTagName("image").getLength()).isZero();
        for (Element use : elements(svg.getElementsByTagName("use"))) {
            assertThat(elements(svg.getElementsByTagName("g"))).extracting(each -> "#" + each.getAttribute("id"))
                    .contains(use.getAttribute("href"));
        }
    }

    /** Header pins stand beside what they are called. */
    @ParameterizedTest
    @MethodSource("drawings")
    void thePinsInADrawingAreTheHeaders(Path file) throws Exception {
        List<String> texts = elements(parsed(file).getElementsByTagName("text")).stream().map(Element::getTextContent)
                .toList();
        for (int i = 1; i < texts.size(); i++) {
            if (texts.get(i).matches("pin \\d+")) {
                int carries = HEADER[Integer.parseInt(texts.get(i).substring(4)) - 1];
                String called = texts.get(i - 1);
                assertThat(called).as("%s of %s", texts.get(i), file.getFileName()).isEqualTo(
                        carries == V33 ? "3.3 V" : carries == GND ? "ground" : carries == V5 ? "5 V" : "BCM " + carries);
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void theLaneIsDrawnToScaleWithEachRigsBeams(PracticeRigs rigs) throws Exception {
        String id = "rig-" + rigs.name().toLowerCase(Locale.ROOT);
        Element drawn = elements(parsed(NOTES.resolve("drawings/lane.svg")).getElementsByTagName("g")).stream()
                .filter(each -> each.getAttribute("id").equals(id)).findFirst().orElseThrow();
        List<String> beams = new ArrayList<>();
        double holeX = Double.parseDouble(((Element) drawn.getElementsByTagName("circle").item(0)).getAttribute("cx"));
        for (Element line : elements(drawn.getElementsByTagName("path"))) {
            if (line.hasAttribute("data-mm")) {
                double mm = Double.parseDouble(line.getAttribute("data-mm"));
                beams.add(line.getAttribute("data-name") + " at " + mm);
                assertThat(line.getAttribute("d")).as("%s, 0.36 px a mm", line.getAttribute("data-name"))
                        .startsWith(String.format(Locale.ROOT, "M%.1f ", holeX + 0.36 * mm));
            }
        }
        Rig rig = rigs.level();
        assertThat(beams).containsExactlyElementsOf(rig.beams().stream()
                .map(each -> rig.channels().get(each.channel()).name() + " at " + each.positionMm()).toList());
    }

    @Test
    void linksLeadSomewhereAndEveryDrawingIsShown() throws IOException {
        List<Path> linked = new ArrayList<>();
        try (Stream<Path> pages = Files.list(NOTES).filter(each -> each.toString().endsWith(".md"))) {
            for (Path page : pages.toList()) {
                Pattern.compile("]\\(([^)#:]+)\\)").matcher(Files.readString(page)).results().map(MatchResult::group)
                        .map(each -> NOTES.resolve(each.substring(2, each.length() - 1))).forEach(linked::add);
            }
        }
        assertThat(linked).allSatisfy(each -> assertThat(each).exists());
        assertThat(linked).containsAll(drawings().toList());
    }

    private static Document parsed(Path file) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file.toFile());
    }

    private static List<Element> elements(NodeList nodes) {
        List<Element> all = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            all.add((Element) nodes.item(i));
        }
        return all;
    }
}
