package org.cupbeam.studio;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.util.List;

/** The plan of the host's half of the house. */
@AnalyzeClasses(packages = "org.cupbeam", importOptions = DoNotIncludeTests.class)
class HouseTest {
    private static final String HOST = "org.cupbeam.studio";
    /** From the first room to the last; a room may use only those before it. The main is above them all. */
    private static final List<String> ROOMS = List.of("ingest", "lease", "store", "insight", "usage", "league", "coach", "web", "seed");
    /**
     * What a room of the host may use of the controller; commission, since the same functions tell from rolled balls where beams
     * stand, whether at the lane's terminal or on its page.
     */
    private static final List<String> OF_THE_CONTROLLER = List.of("green", "commission", "drill", "event");

    @ArchTest
    static final ArchRule noCycles = slices().matching(HOST + ".(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule dataFlowsOneWay = classes().that().resideInAPackage(HOST + "..").should(
            new ArchCondition<JavaClass>("use only rooms before their own, and of the controller what they may") {
                @Override
                public void check(JavaClass from, ConditionEvents events) {
                    from.getDirectDependenciesFromSelf().forEach(use -> {
                        if (!mayUse(from, use.getTargetClass())) {
                            events.add(SimpleConditionEvent.violated(from, use.getDescription()));
                        }
                    });
                }
            });

    @ArchTest
    static final ArchRule controllerKnowsNoHost = ArchRuleDefinition.noClasses()
            .that().resideOutsideOfPackage(HOST + "..").should().dependOnClassesThat().resideInAPackage(HOST + "..");

    @ArchTest
    static final ArchRule insightIsPure = ArchRuleDefinition.noClasses().that().resideInAPackage(HOST + ".insight..")
            .should().dependOnClassesThat().resideInAnyPackage("java.io..", "java.nio..", "java.net..",
                    "java.util.concurrent..", "java.sql..", "org.jdbi..", "org.slf4j..")
            .orShould().callMethod(System.class, "nanoTime")
            .orShould().callMethod(System.class, "currentTimeMillis")
            .allowEmptyShould(true);

    /** Places are worked out of what the store found, at a moment that is handed in. */
    @ArchTest
    static final ArchRule leaguesAreFunctions = ArchRuleDefinition.noClasses().that().resideInAPackage(HOST + ".league..")
            .should().dependOnClassesThat().resideInAnyPackage("java.io..", "java.nio..", "java.sql..", "org.jdbi..", "org.slf4j..")
            .orShould().dependOnClassesThat().areAssignableTo(java.time.Clock.class)
            .orShould().callMethod(java.time.Instant.class, "now")
            .orShould().callMethod(System.class, "currentTimeMillis");

    /** What is planted is there to check insight, so it must not come out of insight. */
    @ArchTest
    static final ArchRule seedIsItsOwn = ArchRuleDefinition.noClasses().that().resideInAPackage(HOST + ".seed..")
            .should().dependOnClassesThat().resideInAnyPackage(HOST + ".insight..", HOST + ".coach..", HOST + ".web..");

    /** Nothing that somebody writes in a page can have the host fetch an address: no room of it can fetch any. */
    @ArchTest
    static final ArchRule fetchesNothing = ArchRuleDefinition.noClasses().that().resideInAPackage(HOST + "..")
            .should().dependOnClassesThat().resideInAPackage("java.net.http..")
            .orShould().dependOnClassesThat().resideInAnyPackage("org.eclipse.jetty.client..", "jdk.httpserver..")
            .orShould().callMethod(java.net.URL.class, "openConnection")
            .orShould().callMethod(java.net.URL.class, "openStream")
            .orShould().callMethod(java.net.URI.class, "toURL")
            .orShould().dependOnClassesThat().areAssignableTo(java.net.URLConnection.class)
            .orShould().dependOnClassesThat().belongToAnyOf(java.net.Socket.class, java.nio.channels.SocketChannel.class);

    @ArchTest
    static void everyClassHasARoom(JavaClasses all) {
        for (JavaClass each : all) {
            if (each.getPackageName().startsWith(HOST + ".") && !ROOMS.contains(room(each))) {
                throw new AssertionError(each.getName() + " is in no room of the plan " + ROOMS);
            }
        }
    }

    private static boolean mayUse(JavaClass from, JavaClass target) {
        if (!target.getPackageName().startsWith("org.cupbeam")) {
            return true;
        }
        boolean main = from.getPackageName().equals(HOST);
        if (target.getPackageName().startsWith(HOST)) {
            return main || ROOMS.indexOf(room(target)) >= 0 && ROOMS.indexOf(room(target)) <= ROOMS.indexOf(room(from));
        }
        String room = target.getPackageName().split("\\.").length > 2 ? target.getPackageName().split("\\.")[2] : "";
        return OF_THE_CONTROLLER.contains(room) || main && List.of("lane", "link", "log", "service").contains(room);
    }

    private static String room(JavaClass type) {
        String[] parts = type.getPackageName().split("\\.");
        return parts.length > 3 ? parts[3] : "";
    }
}
