package org.cupbeam.studio.installed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Installing, running, upgrading and removing the package, as whoever sits at the machine sees it. */
@Timeout(600)
class InstalledIT {
    private static final String STUDIO = "cupbeam-studio";
    private static final String STUDIO_CLASSES = "/var/cache/cupbeam/studio.jsa";
    private static final Duration SOON = Duration.ofSeconds(60);

    private Box box;

    @BeforeEach
    void install() throws Exception {
        box = Box.boot();
        box.take(built());
        box.in("apt-get", "install", "--yes", Box.TAKEN + built().getFileName());
        Box.until(SOON, () -> active(STUDIO));
    }

    @AfterEach
    void unplug() throws Exception {
        if (box != null) {
            box.close();
        }
    }

    private static Path built() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("target"))) {
            return files.filter(file -> file.toString().endsWith("_all.deb")).findFirst().orElseThrow();
        }
    }

    private boolean active(String unit) {
        return box.tried("systemctl", "is-active", unit).equals("active");
    }

    private String shown(String unit, String property) {
        return box.tried("systemctl", "show", "--value", "--property=" + property, unit);
    }

    @Test
    void installingGivesAServiceThatRunsIsEnabledAndIdles() throws Exception {
        assertThat(box.in("systemctl", "is-enabled", STUDIO)).isEqualTo("enabled");
        assertThat(box.tried("systemctl", "is-enabled", "cupbeam-lane")).isEqualTo("disabled");
        assertThat(shown(STUDIO, "StatusText")).contains("http://localhost:8080", "/var/lib/cupbeam");
        assertThat(box.page("/")).contains("<title>Lanes</title>");
        assertThat(box.in("stat", "--format=%U:%G %a", "/var/lib/cupbeam", "/var/lib/cupbeam/studio.db", "/etc/cupbeam"))
                .isEqualTo("cupbeam:cupbeam 700\ncupbeam:cupbeam 600\nroot:cupbeam 750");
        Thread.sleep(20_000);
        double before = processorSeconds();
        Thread.sleep(20_000);
        double share = (processorSeconds() - before) / 20;
        System.out.printf("idle: %.2f %% of a core%n", 100 * share);
        assertThat(share).isLessThan(0.05);
    }

    /** Fields 14 and 15 of proc(5)'s stat, in its ticks of 10 ms. */
    private double processorSeconds() throws IOException, InterruptedException {
        String[] after = box.in("cat", "/proc/" + shown(STUDIO, "MainPID") + "/stat").replaceFirst(".*\\) ", "").split(" ");
        return (Long.parseLong(after[11]) + Long.parseLong(after[12])) / 100.0;
    }

    @Test
    void itsClassesAreArchivedAndMadeAnewWhenJavaHasChanged() throws Exception {
        assertThat(box.in("stat", "--format=%U:%G %a", STUDIO_CLASSES, "/var/cache/cupbeam/lane.jsa"))
                .isEqualTo("root:root 644\nroot:root 644");
        assertThat(box.in("cat", "/proc/" + shown(STUDIO, "MainPID") + "/maps")).contains(STUDIO_CLASSES);
        double with = startSeconds();
        box.in("rm", STUDIO_CLASSES);
        double without = startSeconds();
        System.out.printf("start to ready, by the clock: %.2f s with its classes archived, %.2f s without%n", with, without);
        box.in("dpkg-trigger", "--by-package=openjdk-17-jre-headless", "/usr/lib/jvm");
        box.in("dpkg", "--configure", "--pending");
        assertThat(box.file(STUDIO_CLASSES)).isNotEmptyFile();
        assertThat(with).isLessThan(without);
    }

    /** Of three starts the fastest. */
    private double startSeconds() throws Exception {
        double best = Double.MAX_VALUE;
        for (int i = 0; i < 3; i++) {
            box.in("systemctl", "restart", STUDIO);
            long us = Long.parseLong(shown(STUDIO, "ActiveEnterTimestampMonotonic"))
                    - Long.parseLong(shown(STUDIO, "InactiveExitTimestampMonotonic"));
            best = Math.min(best, us * 1e-6);
        }
        return best;
    }

    @Test
    void theServiceMayDoLittleBesideItsWork() throws Exception {
        assertThat(box.in("systemd-analyze", "verify", STUDIO + ".service", "cupbeam-lane.service")).isEmpty();
        for (String unit : new String[] {STUDIO, "cupbeam-lane"}) {
            String exposure = box.tried("systemd-analyze", "security", "--no-pager", unit);
            String level = exposure.replaceAll("(?s).*exposure level for [^:]*: ([0-9.]+).*", "$1");
            System.out.println(unit + ": exposure " + level + " of 10");
            assertThat(Double.parseDouble(level)).isLessThan(2);
        }
        String status = box.in("cat", "/proc/" + shown(STUDIO, "MainPID") + "/status");
        assertThat(status).containsPattern("CapEff:\\s+0000000000000000").containsPattern("NoNewPrivs:\\s+1")
                .containsPattern("Seccomp:\\s+2");
    }

    @Test
    void whatDiesIsStartedAgain() throws Exception {
        String first = shown(STUDIO, "MainPID");
        box.in("systemctl", "kill", "--signal=SIGKILL", STUDIO);
        Box.until(SOON, () -> !shown(STUDIO, "MainPID").equals(first) && box.page("/").contains("<title>Lanes</title>"));
        assertThat(shown(STUDIO, "NRestarts")).isEqualTo("1");
    }

    @Test
    void whatHangsIsStartedAgain() throws Exception {
        box.write("/etc/systemd/system/cupbeam-studio.service.d/soon.conf", "[Service]\nWatchdogSec=11\n");
        box.in("systemctl", "daemon-reload");
        box.in("systemctl", "restart", STUDIO);
        String first = shown(STUDIO, "MainPID");
        Thread.sleep(25_000);
        assertThat(shown(STUDIO, "MainPID")).as("as long as it is well").isEqualTo(first);
        box.in("systemctl", "kill", "--signal=SIGSTOP", STUDIO);
        Box.until(SOON, () -> active(STUDIO) && !shown(STUDIO, "MainPID").equals(first));
        assertThat(box.in("journalctl", "--unit=" + STUDIO)).contains("Watchdog timeout");
    }

    @Test
    void anOptionThatMakesNoSenseIsSaidOnceAndNotTriedAgain() throws Exception {
        box.write("/etc/cupbeam/studio.options", "--data /var/lib/cupbeam\n--lane lane-1=/etc/cupbeam/nowhere.toml\n");
        box.tried("systemctl", "restart", STUDIO);
        assertThat(box.tried("systemctl", "is-failed", STUDIO)).isEqualTo("failed");
        assertThat(shown(STUDIO, "NRestarts")).isEqualTo("0");
        assertThat(box.in("journalctl", "--unit=" + STUDIO)).contains("/etc/cupbeam/nowhere.toml");
    }

    @Test
    void aLaneAloneRunsInItsPlaceAndItsLinesHaveTheirLevel() throws Exception {
        box.in("systemctl", "disable", "--now", STUDIO);
        box.write("/etc/cupbeam/lane.options", "# a lane on a simulated green\n--data /var/lib/cupbeam\n--practice\n"
                + "--rig /usr/share/doc/cupbeam/rigs/full.toml\n--broker tcp://127.0.0.1:1883\n");
        box.in("systemctl", "enable", "--now", "cupbeam-lane");
        assertThat(active("cupbeam-lane")).isTrue();
        assertThat(shown("cupbeam-lane", "StatusText")).startsWith("lane home/lane-1 is ready");
        Box.until(SOON, () -> box.tried("journalctl", "--unit=cupbeam-lane", "--priority=warning").contains("127.0.0.1:1883"));
        Thread.sleep(10_000);
        assertThat(active("cupbeam-lane")).as("a broker that is away is waited for").isTrue();
        assertThat(shown("cupbeam-lane", "NRestarts")).isEqualTo("0");
        box.in("systemctl", "stop", "cupbeam-lane");
        assertThat(shown("cupbeam-lane", "Result")).isEqualTo("success");
    }

    @Test
    void anUpgradeInMidRunLosesNothing() throws Exception {
        box.write("/etc/cupbeam/studio.options", "--data /var/lib/cupbeam\n--practice\n--speed 4\n");
        box.in("systemctl", "restart", STUDIO);
        Kept before = keptOnce(5);
        box.take(newer());
        box.in("apt-get", "install", "--yes", "-o", "Dpkg::Options::=--force-confold", Box.TAKEN + newer().getFileName());
        assertThat(active(STUDIO)).isTrue();
        Kept after = keptOnce(before.events() + 5);
        assertThat(after.journals()).isEqualTo(1);
        assertThat(after.events()).as("sequence numbers are without a gap").isEqualTo(after.last());
        assertThat(after.open()).as("no run was left behind: a duel has two").hasSizeLessThanOrEqualTo(2);
    }

    private Path newer() throws IOException, InterruptedException {
        Path deb = built().resolveSibling("cupbeam_99.deb");
        Path folder = Files.createTempDirectory("cupbeam-newer");
        Box.run("dpkg-deb", "-R", built().toString(), folder.toString());
        Path control = folder.resolve("DEBIAN/control");
        Files.writeString(control, Files.readString(control).replaceFirst("Version: .*", "Version: 99.0.0"));
        Box.run("dpkg-deb", "-Znone", "-b", folder.toString(), deb.toString());
        Box.run("rm", "-r", folder.toString());
        return deb;
    }

    /** What the store holds, as soon as it holds so many events. */
    private Kept keptOnce(long events) throws InterruptedException {
        Box.until(Duration.ofSeconds(120), () -> Kept.in(box).events() >= events);
        return Kept.in(box);
    }

    @Test
    void removingLeavesSettingsAndPuttsAndPurgingLeavesThePutts() throws Exception {
        box.in("apt-get", "remove", "--yes", "cupbeam");
        assertThat(box.tried("systemctl", "list-units", "--no-legend", "cupbeam*")).isEmpty();
        assertThat(box.file("/usr/share/cupbeam")).doesNotExist();
        assertThat(box.file("/var/cache/cupbeam")).doesNotExist();
        assertThat(box.file("/etc/cupbeam/studio.options")).exists();
        assertThat(box.file("/var/lib/cupbeam/studio.db")).exists();
        box.in("apt-get", "install", "--yes", Box.TAKEN + built().getFileName());
        Box.until(SOON, () -> active(STUDIO));
        assertThat(box.in("systemctl", "is-enabled", STUDIO)).isEqualTo("enabled");
        String last = box.in("apt-get", "purge", "--yes", "cupbeam");
        assertThat(last).contains("The putts stay in /var/lib/cupbeam");
        assertThat(box.file("/etc/cupbeam")).doesNotExist();
        assertThat(box.file("/var/lib/cupbeam/studio.db")).exists();
        assertThat(box.tried("systemctl", "list-unit-files", "--no-legend", "cupbeam*")).doesNotContain("cupbeam");
    }
}
