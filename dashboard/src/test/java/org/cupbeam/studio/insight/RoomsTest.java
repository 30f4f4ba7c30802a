package org.cupbeam.studio.insight;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.util.List;

/** The plan of insight's own rooms. */
@AnalyzeClasses(packages = "org.cupbeam.studio.insight", importOptions = DoNotIncludeTests.class)
class RoomsTest {
    private static final String HERE = "org.cupbeam.studio.insight";
    /** A room may use only those before it; {@code Insight} itself all of them. */
    private static final List<String> ROOMS = List.of("words", "chance", "shot", "make", "run", "weak", "turn", "card",
            "surface", "plot", "advice", "");

    @ArchTest
    static final ArchRule eachRoomUsesOnlyThoseBeforeIt = ArchRuleDefinition.classes().should(
            new ArchCondition<JavaClass>("use only rooms before their own") {
                @Override
                public void check(JavaClass from, ConditionEvents events) {
                    from.getDirectDependenciesFromSelf().forEach(use -> {
                        JavaClass target = use.getTargetClass();
                        if (target.getPackageName().startsWith(HERE) && place(target) > place(from)) {
                            events.add(SimpleConditionEvent.violated(from, use.getDescription()));
                        }
                    });
                }
            });

    @ArchTest
    static final ArchRule ofTheControllerOnlyTheGreenAndTheDrills = ArchRuleDefinition.noClasses().should()
            .dependOnClassesThat().resideInAnyPackage("org.cupbeam.rig..", "org.cupbeam.edge..", "org.cupbeam.track..",
                    "org.cupbeam.event..", "org.cupbeam.journal..", "org.cupbeam.link..", "org.cupbeam.lane..");

    private static int place(JavaClass type) {
        String name = type.getPackageName().substring(HERE.length());
        int place = ROOMS.indexOf(name.isEmpty() ? "" : name.substring(1));
        if (place < 0) {
            throw new AssertionError(type.getName() + " is in no room of the plan " + ROOMS);
        }
        return place;
    }
}
