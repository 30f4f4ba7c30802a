package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.TreeMap;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The list of parts in each jar, against the jar, and against docs/dependencies.md. */
class SbomIT {
    private static final Path STUDIO = Path.of("target", "cupbeam-studio.jar");
    /** A copy in Netty's own jar, which docs/dependencies.md tells of. */
    private static final String WITHIN_ANOTHER = "org.jctools:jctools-core";
    private static final Pattern CODE = Pattern.compile("`([^`]+:[^`]+)`");
    private static final Pattern POM = Pattern.compile("META-INF/maven/.*/pom.properties");

    /** A line of the table. */
    private record Line(List<Pattern> parts, String licence) {
        boolean names(String part) {
            return parts.stream().anyMatch(each -> each.matcher(part).matches());
        }
    }

    @ParameterizedTest
    @CsvSource({"target/cupbeam-studio.jar, cupbeam-dashboard, 60", "../controller/target/cupbeam-controller.jar, cupbeam-controller, 15"})
    void eachJarCarriesTheListOfItsOwnParts(Path jar, String name, int least) throws IOException {
        JsonNode list = list(jar);

        assertThat(list.at("/bomFormat").asText()).isEqualTo("CycloneDX");
        assertThat(list.at("/metadata/component/name").asText()).isEqualTo(name);
        assertThat(list.at("/components").size()).isGreaterThan(least);
        assertThat(list.at("/components")).allSatisfy(each -> {
            assertThat(each.get("purl").asText()).startsWith("pkg:maven/");
            assertThat(part(each).startsWith("org.cupbeam:") || each.path("hashes").toString().contains("SHA-256"))
                    .as(part(each)).isTrue();
        });
    }

    @ParameterizedTest
    @CsvSource({"target/cupbeam-studio.jar", "../controller/target/cupbeam-controller.jar"})
    void nothingIsInAJarThatTheListDoesNotName(Path jar) throws IOException {
        TreeMap<String, String> versions = new TreeMap<>();
        list(jar).at("/components").forEach(each -> versions.put(part(each), each.get("version").asText()));
        int found = 0;
        try (JarFile open = new JarFile(jar.toFile())) {
            for (JarEntry each : open.stream().filter(entry -> POM.matcher(entry.getName()).matches()).toList()) {
                Properties is = new Properties();
                is.load(open.getInputStream(each));
                String part = is.getProperty("groupId") + ":" + is.getProperty("artifactId");
                if (!part.startsWith("org.cupbeam:") && !part.equals(WITHIN_ANOTHER)) {
                    assertThat(versions).as(each.getName()).containsEntry(part, is.getProperty("version"));
                    found++;
                }
            }
        }
        assertThat(found).as("parts that name themselves").isGreaterThan(10);
    }

    @Test
    void eachPartHasItsLineAndItsLicenceAndNoLineIsOfNothing() throws IOException {
        List<Line> lines = Files.readAllLines(Path.of("..", "docs", "dependencies.md")).stream()
                .filter(each -> each.startsWith("| `")).map(SbomIT::line).toList();
        List<Line> used = new ArrayList<>();
        for (JsonNode each : list(STUDIO).at("/components")) {
            if (!part(each).startsWith("org.cupbeam:")) {
                List<Line> of = lines.stream().filter(line -> line.names(part(each))).toList();
                assertThat(of).as("one line in docs/dependencies.md for " + part(each)).hasSize(1);
                assertThat(of.get(0).licence).as(part(each)).isEqualTo(licence(each));
                used.addAll(of);
            }
        }
        assertThat(lines).allSatisfy(each -> assertThat(used.contains(each) || each.names(WITHIN_ANOTHER)).as("used: " + each)
                .isTrue());
    }

    private static Line line(String row) {
        String[] cells = row.split("\\|");
        return new Line(CODE.matcher(cells[1]).results().map(MatchResult::group).map(each -> Pattern.compile(
                each.replace("`", "").replace(".", "\\.").replace("*", "[^:]*"))).toList(), cells[2].strip());
    }

    private static JsonNode list(Path jar) throws IOException {
        assertThat(jar).as("the packaged jar; run mvn verify, not a single test").exists();
        try (JarFile open = new JarFile(jar.toFile())) {
            JarEntry found = open.getJarEntry("META-INF/sbom/bom.json");
            Assumptions.assumeTrue(found != null || "1".equals(System.getenv("CUPBEAM_REQUIRE_SBOM")),
                    "built offline (-o), where the plugin makes no list of parts");
            assertThat(found).as("the list of parts in " + jar).isNotNull();
            return new ObjectMapper().readTree(open.getInputStream(found));
        }
    }

    private static String part(JsonNode component) {
        return component.get("group").asText() + ":" + component.get("name").asText();
    }

    private static String licence(JsonNode component) {
        List<String> names = new ArrayList<>();
        component.at("/licenses").forEach(each -> names.add(each.at("/license/id").asText(each.at("/license/name").asText())));
        return String.join(" or ", names);
    }
}
