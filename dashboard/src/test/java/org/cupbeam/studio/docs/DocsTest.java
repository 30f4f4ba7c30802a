package org.cupbeam.studio.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What can be seen of the documents without running anything. */
class DocsTest {
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#\\s]*)(?:#([^)\\s]*))?\\)");
    private static final Pattern BUILD = Pattern.compile("(?:mvn|T) .*");
    private static final Pattern CLASS = Pattern.compile("\\b[A-Z]\\w*(?:IT|Test)\\b");

    static List<Doc> all() {
        return Doc.all();
    }

    static List<Doc> withBuilds() {
        return all().stream().filter(doc -> !builds(doc).isEmpty()).toList();
    }

    static List<Doc> withReasons() {
        return all().stream().filter(doc -> doc.commands().stream().anyMatch(each -> each.reason() != null)).toList();
    }

    @ParameterizedTest
    @MethodSource("all")
    void everyLinkLeadsSomewhere(Doc doc) {
        Path here = Doc.ROOT.resolve(doc.name()).toAbsolutePath().normalize();
        LINK.matcher(doc.text()).results().filter(link -> !link.group(1).contains(":")).forEach(link -> {
            Path there = link.group(1).isEmpty() ? here : here.resolveSibling(link.group(1)).normalize();
            assertThat(there).as("%s: %s", doc, link.group()).exists();
            if (link.group(2) != null) {
                assertThat(headings(there)).as("%s: %s", doc, link.group()).contains(link.group(2));
            }
        });
    }

    /** As the usual readers of Markdown name them: small letters, hyphens for blanks, nothing else. From memory. */
    private static Set<String> headings(Path page) {
        return Sources.read(page).lines().filter(line -> line.startsWith("#")).map(line -> line.replaceFirst("#+ ", "").toLowerCase()
                .replaceAll("[^\\p{Alnum} _-]", "").replace(' ', '-')).collect(Collectors.toSet());
    }

    @Test
    void everyPictureIsShownAndMadeByAScript() throws Exception {
        String shown = all().stream().map(Doc::text).collect(Collectors.joining());
        String scripts = Sources.files(List.of("dashboard/src/test/java"), ".java").stream().map(Sources::read)
                .collect(Collectors.joining());
        try (Stream<Path> pictures = Files.list(Doc.ROOT.resolve("docs/pictures"))) {
            assertThat(pictures.map(each -> each.getFileName().toString())).hasSizeGreaterThan(10).allSatisfy(name -> {
                assertThat(shown.contains("pictures/" + name)).as("a document shows %s", name).isTrue();
                String stem = name.replace(".png", "");
                String part = stem.replaceFirst("-(?:phone|wall|\\d+)$", "");
                assertThat(name.endsWith(".svg") && scripts.contains("Tables.holds(Doc.ROOT.resolve(\"docs/pictures/" + name + "\")")
                        || scripts.contains("Pictures.of(\"" + stem + "\")") || scripts.contains("Pictures.of(\"" + part + "-\" +")
                        || Pattern.compile("(?m)^ {12}" + part + ", +/").matcher(scripts).find())
                        .as("%s is made by a script", name).isTrue();
            });
        }
    }

    /** A build's command is not run by a build: its profiles, modules and tests are looked up. */
    @ParameterizedTest
    @MethodSource("withBuilds")
    void buildsNameWhatThereIs(Doc doc) {
        String poms = Stream.of("pom.xml", "controller/pom.xml", "dashboard/pom.xml").map(Doc.ROOT::resolve).map(Sources::read)
                .collect(Collectors.joining());
        for (String build : builds(doc)) {
            given(build, "-P(\\S+)").forEach(profile -> assertThat(poms.contains("<id>" + profile + "</id>"))
                    .as("%s: %s", doc, build).isTrue());
            given(build, "-pl (\\S+)").forEach(module -> assertThat(Doc.ROOT.resolve(module).resolve("pom.xml")).as("%s: %s", doc, build)
                    .exists());
            given(build.replace("'", ""), "-D(?:it\\.)?test=(\\S+)").stream().flatMap(tests -> Arrays.stream(tests.split(",")))
                    .filter(test -> !test.equals("none") && !test.equals("X"))
                    .forEach(test -> assertThat(Sources.hasClass(test.replaceAll("#.*", ""))).as("%s: %s: %s", doc, build, test).isTrue());
        }
    }

    @ParameterizedTest
    @MethodSource("withReasons")
    void aReasonNamesATestThatThereIs(Doc doc) {
        for (Doc.Command command : doc.commands()) {
            if (command.reason() != null) {
                assertThat(command.reason()).as("%s line %s", doc, command.line()).hasSizeGreaterThan(5);
                CLASS.matcher(command.reason()).results().map(MatchResult::group)
                        .forEach(test -> assertThat(Sources.hasClass(test)).as("%s line %s: %s", doc, command.line(), test).isTrue());
            }
        }
    }

    @Test
    void theReferenceHasEveryExportAndEveryVariable() {
        String reference = Doc.named("docs/reference.md").text();
        Set<String> found = new TreeSet<>();
        for (Path file : Sources.files(List.of("controller/src/main/java", "dashboard/src/main/java", "dashboard/src/deb/files"), "")) {
            String text = Sources.read(file);
            Pattern.compile("routes\\.get\\(\"([^\"]*/export)\"").matcher(text).results().forEach(each -> found.add(each.group(1)));
            Pattern.compile("\\bCUPBEAM_[A-Z_]+\\b|getenv\\(\"(\\w+)\"\\)").matcher(text).results()
                    .forEach(each -> found.add(each.group(1) == null ? each.group() : each.group(1)));
        }
        assertThat(found).hasSizeGreaterThan(8).allSatisfy(each -> assertThat(reference.contains("`" + each + "`")).as(each).isTrue());
    }

    private static List<String> builds(Doc doc) {
        List<String> builds = new ArrayList<>(doc.commands().stream().map(Doc.Command::words).toList());
        builds.addAll(doc.quoted().toList());
        return builds.stream().filter(each -> BUILD.matcher(each).matches()).toList();
    }

    private static List<String> given(String command, String option) {
        return Pattern.compile("(?:^|\\s)" + option).matcher(command).results().map(each -> each.group(1)).toList();
    }
}
