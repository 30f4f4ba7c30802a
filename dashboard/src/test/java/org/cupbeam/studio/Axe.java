package org.cupbeam.studio;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** axe-core on the page that a browser has open: what it finds that keeps somebody from using the page. */
final class Axe {
    private static final String SCRIPT = "/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js";
    private static final Set<String> GRAVE = Set.of("serious", "critical");

    private final String script;

    Axe() throws IOException {
        try (InputStream in = Axe.class.getResourceAsStream(SCRIPT)) {
            script = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Findings of impact serious or critical by all rules, an element each, with what would do. */
    List<String> findings(Browser browser) {
        return findings(browser, "{}");
    }

    /** The same of contrast alone, for a page that is seen in another light. */
    List<String> contrast(Browser browser) {
        return findings(browser, "{ runOnly: ['color-contrast'] }");
    }

    private List<String> findings(Browser browser, String options) {
        browser.value("void " + (browser.value("!window.axe").asBoolean() ? "(() => {" + script + "})()" : "0"));
        JsonNode found = browser.value("axe.run(document, Object.assign({ resultTypes: ['violations'] }, " + options
                + ")).then(all => all.violations)");
        List<String> grave = new ArrayList<>();
        for (JsonNode rule : found) {
            if (GRAVE.contains(rule.path("impact").asText())) {
                rule.path("nodes").forEach(node -> grave.add(rule.path("id").asText() + " at " + node.path("target")
                        + ": " + node.path("failureSummary").asText().replaceAll("\\s+", " ")));
            }
        }
        return grave;
    }
}
