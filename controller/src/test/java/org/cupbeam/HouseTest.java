package org.cupbeam;

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

/** The house's plan: data flows one way, and the core knows no clock, thread, file or network. */
@AnalyzeClasses(packages = "org.cupbeam", importOptions = DoNotIncludeTests.class)
class HouseTest {
    /** From the first room to the last; a room may use only those before it. */
    private static final List<String> ROOMS = List.of(
            "green", "rig", "edge", "track", "commission", "drill", "event", "journal", "link", "lane", "log", "service", "cli");

    @ArchTest
    static final ArchRule noCycles = slices().matching("org.cupbeam.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule dataFlowsOneWay = ArchRuleDefinition.classes().should(
            new ArchCondition<JavaClass>("use only rooms before their own") {
                @Override
                public void check(JavaClass from, ConditionEvents events) {
                    from.getDirectDependenciesFromSelf().forEach(use -> {
                        int there = room(use.getTargetClass());
                        if (there > room(from)) {
                            events.add(SimpleConditionEvent.violated(from, use.getDescription()));
                        }
                    });
                }
            });

    @ArchTest
    static final ArchRule coreIsPure = ArchRuleDefinition.noClasses()
            .that().resideInAnyPackage("org.cupbeam.green..", "org.cupbeam.track..", "org.cupbeam.commission..", "org.cupbeam.drill..")
            .and().haveSimpleNameNotEndingWith("File")
            .should().dependOnClassesThat().resideInAnyPackage(
                    "java.io..", "java.nio.file..", "java.nio.channels..", "java.net..", "java.time..",
                    "java.util.concurrent..", "java.sql..", "org.slf4j..")
            .orShould().dependOnClassesThat().belongToAnyOf(Thread.class)
            .orShould().callMethod(System.class, "nanoTime")
            .orShould().callMethod(System.class, "currentTimeMillis");

    @ArchTest
    static void everyClassHasARoom(JavaClasses classes) {
        for (JavaClass each : classes) {
            if (each.getPackageName().startsWith("org.cupbeam.") && room(each) < 0) {
                throw new AssertionError(each.getName() + " is in no room of the plan " + ROOMS);
            }
        }
    }

    private static int room(JavaClass type) {
        String[] parts = type.getPackageName().split("\\.");
        return parts.length > 2 && parts[0].equals("org") && parts[1].equals("cupbeam")
                ? ROOMS.indexOf(parts[2]) : -1;
    }
}
