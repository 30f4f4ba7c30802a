package org.cupbeam.studio;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.Map;

/**
 * A thumb on a phone's screen: it finds what can be touched by the words on it, only where it lies on the screen as it is, open
 * to the thumb and large enough for one; and counts its touches.
 */
final class Thumb {
    /** The least side of what can be touched: 44 CSS px, WCAG 2.2, success criterion 2.5.5 (level AAA). */
    private static final int LARGE_ENOUGH_PX = 44;
    private static final ObjectMapper JSON = new ObjectMapper();
    /** Where on the screen to touch what says these words: [x, y], or the reason why not. */
    private static final String FIND = """
            (words => {
              const can = [...document.querySelectorAll('a[href], button, input, summary, label')];
              const said = each => each.matches('input') ? each.placeholder || each.labels?.[0]?.innerText || '' : each.innerText;
              const its = can.filter(each => said(each).replaceAll('\\u00a0', ' ').trim().split('\\n')[0] === words);
              if (!its.length) return 'nothing says so';
              const shown = its.filter(each => each.getClientRects().length && !each.disabled);
              if (!shown.length) return 'it is not shown, or off';
              const it = shown.find(each => each.matches('input')) ?? shown[0];
              const box = it.getBoundingClientRect();
              const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
              if (box.y < 0 || box.bottom > innerHeight || box.x < 0 || box.right > innerWidth) return 'it is off the screen, at ' + box.y;
              if (Math.min(box.width, box.height) < LARGE) return 'too small for a thumb: ' + box.width + ' x ' + box.height;
              const top = document.elementFromPoint(x, y);
              return it === top || it.contains(top) ? [x, y] : 'under ' + top?.outerHTML;
            })(WORDS)""".replace("LARGE", "" + LARGE_ENOUGH_PX);

    private final Browser browser;
    private int taps;

    Thumb(Browser browser) {
        this.browser = browser;
        browser.call("Emulation.setTouchEmulationEnabled", Map.of("enabled", true));
    }

    /** Counts from nought again. */
    void begin() {
        taps = 0;
    }

    int taps() {
        return taps;
    }

    /** Whether it can be touched as things are. */
    boolean saw(String words) {
        return find(words).isArray();
    }

    /** Waits until it can be touched. */
    JsonNode sees(String words) {
        for (int tries = 0; tries < 100; tries++) {
            JsonNode found = find(words);
            if (found.isArray()) {
                return found;
            }
            pause();
        }
        throw new AssertionError("\"" + words + "\": " + find(words).asText() + "; on the screen: "
                + browser.value("document.body.innerText").asText());
    }

    /** Touches what says these words. */
    void touch(String words) {
        JsonNode at = sees(words);
        browser.call("Input.dispatchTouchEvent", Map.of("type", "touchStart", "touchPoints",
                List.of(Map.of("x", at.get(0).asDouble(), "y", at.get(1).asDouble()))));
        browser.call("Input.dispatchTouchEvent", Map.of("type", "touchEnd", "touchPoints", List.of()));
        taps++;
    }

    /** Types where the last touch has put the cursor. */
    void type(String text) {
        browser.await("document.activeElement.matches('input')");
        browser.call("Input.insertText", Map.of("text", text));
    }

    /** The key of the phone's own keyboard. */
    void enter() {
        browser.press("Enter");
    }

    private JsonNode find(String words) {
        return browser.value(FIND.replace("WORDS", JSON.valueToTree(words).toString()));
    }

    private static void pause() {
        try {
            Thread.sleep(50);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
