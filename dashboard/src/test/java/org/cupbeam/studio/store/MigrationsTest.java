package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Migrations that have landed stay as they are: there are stores that have been through them. */
class MigrationsTest {
    /** By SHA-256 of the file, without regard to line ends. A new one gets its line here when it lands. */
    private static final Map<String, String> LANDED = Map.ofEntries(
            Map.entry("V1__lanes_and_their_events.sql", "2eb49e87efebc7889dfe7890d40236272520322c9d89137902a70a6eef859ca1"),
            Map.entry("V2__players_runs_and_attempts.sql", "9c2d9f3cedd639cbe09128f650f05bc725280bca5cea81bf33f31aae0d49acb5"),
            Map.entry("V3__corrections_and_notes.sql", "16cdceb5f07247672bbf3e391bb0e9f36573f8753930e19ee189db9edfbf140c"),
            Map.entry("V4__quarter_hours_of_play.sql", "62b6307d4f79a87c194a60f81d8f9a9d5f94e557941b395dfc9f1fcb499a047c"),
            Map.entry("V5__time_in_play.sql", "9227db4082a8d2208f2f34ec7d942bda53964bd64b4a38e842235dd6420dd14a"),
            Map.entry("V6__settings_and_faults.sql", "7f1bee77c6a45c6a703ad497e7c13662fb64dc84b79b5d1142aa65e66f53b403"),
            Map.entry("V7__logbook.sql", "4fef23707effc55c4bfb76cfd0080b4f7425dba1313ad5eb4da9efaf7f83c941"),
            Map.entry("V8__drills_on_the_shelf.sql", "4cdb5b3ebfeea8b87ba10190d28a46ac09f0728f98c8f2b353736a8d2ef856e0"),
            Map.entry("V9__putts_of_a_player.sql", "94db7b69d61d1d8dea14ec436f8c9ce4559bc502603b3abda990a19f773b4433"),
            Map.entry("V10__several_hosts.sql", "7caf0188e2351b40c389c093ee5194213526376658202478208cb16b5e10f8ea"),
            Map.entry("V11__check_sums.sql", "d5fb12cbad37fe13bd9864343d15c302659995df7f5ef5d2f1c1638272426899"),
            Map.entry("V12__attempts_put_right.sql", "58cf5c23ed783c79a2c922979508f0d039e452b54c9bce777c9eaafa127971fb"),
            Map.entry("V13__leagues.sql", "453ff545f4e70ea5200da631118ecf38f4b142588fd7577105a6a2069b36ea9a"),
            Map.entry("V14__not_understood.sql", "a8985a3206011ac2095815423f27140d729709d6fab4bcc50a7fab4b6fe060b2"),
            Map.entry("V15__staff_by_name.sql", "fe31f9b3f8d5dbeb5eb924ad588a7d8cff1967d40b83868c1913c4c9b01db481"),
            Map.entry("V16__studios_apart.sql", "12be2276c301526c4237291ba714718f956b15f2ea55889e43914ac6fa700e6c"),
            Map.entry("V17__mended_stores.sql", "4a5592844c9a2b5680a472fef5528b1021f28b79cb11b095e2f989b03798bb13"),
            Map.entry("V18__sums.sql", "a859d2114663ba392d7c475c86158c44a3df7bc31dc8435e4f5727da3d25ec28"),
            Map.entry("V19__weeks_of_runs.sql", "efbda6d23af6840b9911654d4a17e122753bffac2654a10653b363056c92ab85"),
            Map.entry("V20__changes_in_order.sql", "aaae5a373ec078dee30cc6429597a9d1535e85f3745fabaa698f30afcd3c0d6f"));

    @Test
    void theNewestIsTheOneThatThisVersionSaysItKnows() {
        assertThat(LANDED.keySet()).anyMatch(name -> name.startsWith("V" + Migrations.LATEST + "__"))
                .allMatch(name -> Integer.parseInt(name.substring(1, name.indexOf("__"))) <= Integer.parseInt(Migrations.LATEST));
    }

    @Test
    void landedOnesAreNotEdited() throws IOException {
        for (Map.Entry<String, String> each : LANDED.entrySet()) {
            assertThat(sha256(each.getKey())).as("%s has landed, and stores out there have been through it as it was: put "
                    + "it back, and add a new one for what is to change", each.getKey()).isEqualTo(each.getValue());
        }
    }

    @Test
    void newOnesAreHeldToo() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("src/main/resources/db/studio"))) {
            List<String> names = files.map(file -> file.getFileName().toString()).toList();
            assertThat(names).as("a new migration: add its name and SHA-256 to this test, so that it is not edited later")
                    .containsExactlyInAnyOrderElementsOf(LANDED.keySet());
        }
    }

    private static String sha256(String name) throws IOException {
        try (InputStream in = Migrations.class.getResourceAsStream("/db/studio/" + name)) {
            assertThat(in).as("%s has landed, and is gone: put it back, and add a new one", name).isNotNull();
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256")
                    .digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
