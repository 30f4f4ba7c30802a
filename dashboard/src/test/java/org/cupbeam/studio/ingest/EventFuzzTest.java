package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.List;
import org.cupbeam.fuzz.Fuzz;
import org.cupbeam.studio.Pages;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(value = 3_600, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class EventFuzzTest {
    private static final List<String> PAGES = List.of("/api/players", "/api/players?by=name", "/api/player/1", "/api/runs", "/api/run/1",
            "/api/run/2", "/api/runs/choices", "/api/changes", "/api/usage", "/api/insight/1", "/api/insight/2", "/api/green",
            "/api/green/home/one", "/api/report/1?day=2026-11-25", "/api/names", "/api/player/1/export?as=json",
            "/api/record/export?as=json", "/api/runs/export?as=csv&sheet=attempts", "/api/green/home/one/export?as=csv&sheet=days",
            "/api/usage/export?as=json", "/api/drills", "/api/health");

    @Test
    void whateverComesAsAnEventIsKeptOrSetAsideWithAReasonAndEveryPageIsShownNevertheless() throws Exception {
        try (EventTarget target = new EventTarget()) {
            assertThat(Fuzz.of(target, 500)).as("kinds of outcome").isGreaterThan(20);
            assertThat(target.kept()).as("kept").isGreaterThan(20);
            assertThat(target.deadLetters()).as("set aside").isGreaterThan(10);
            for (String page : PAGES) {
                HttpResponse<byte[]> answer = target.pages.ask("GET", page, null);
                assertThat(answer.statusCode()).as(page + " " + Pages.text(answer).substring(0, Math.min(200,
                        answer.body().length / 4))).isEqualTo(200);
            }
        }
    }
}
