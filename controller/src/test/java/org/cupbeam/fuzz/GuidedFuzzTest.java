package org.cupbeam.fuzz;

import org.cupbeam.link.IncomingTarget;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A minute each, in the nightly profile. */
@EnabledIfSystemProperty(named = "cupbeam.nightly", matches = "true", disabledReason = "runs in the nightly profile")
class GuidedFuzzTest {
    @ParameterizedTest
    @ValueSource(classes = {RigTarget.class, DrillTarget.class, TraceTarget.class, MessageTarget.class, IncomingTarget.class})
    void noInputThatReachesNewCodeIsAFault(Class<? extends Target> target) throws Exception {
        Guided.run(target);
    }
}
