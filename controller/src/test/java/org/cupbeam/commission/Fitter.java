package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.cupbeam.edge.practice.Fault;
import org.cupbeam.edge.practice.PracticeBench;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/** Somebody who fits a simulated lane: does what a course asks, or something else. */
final class Fitter {
    private static final List<Integer> PINS = IntStream.rangeClosed(4, 27).boxed().toList();
    final List<String> said = new ArrayList<>();
    final Course course;
    final PracticeBench bench;
    private int rolls;

    /** Of a new lane with the full rig, of which these sensors are wanted. */
    Fitter(long seed, String sensors, Fault... faults) {
        course = Course.ofNewLane(PINS, Wanted.of(sensors), said::add);
        bench = new PracticeBench(seed, PracticeBench.newLane(seed).with(faults), PINS, course);
        bench.start();
    }

    /** Of a standard lane, checked by this rig file. */
    Fitter(Rig rig, Fault... faults) {
        List<Integer> gpios = rig.channels().stream().map(Channel::gpio).toList();
        course = Course.check(gpios, IntStream.range(0, gpios.size()).mapToObj(i -> {
            Channel each = rig.channels().get(i);
            return new Found(new Wanted(each.kind(), each.name()), i, each.active());
        }).toList(), said::add);
        bench = new PracticeBench(1, PracticeLane.clean(PracticeRigs.STANDARD.level()).with(faults), gpios, course);
        bench.start();
    }

    /** Does what each step asks for until it is of this kind; numbers are left as they are offered. */
    Fitter until(Step.Kind kind) {
        for (int i = 0; i < 100 && course.step().kind() != kind; i++) {
            obey();
        }
        if (course.step().kind() != kind) {
            throw new AssertionError("stays at " + course.step() + ": " + said);
        }
        return this;
    }

    void obey() {
        switch (course.step().kind()) {
            case SETTLE -> bench.rest(3);
            case FIND -> bench.touch(course.step().sensor().name());
            case QUIET -> bench.rest(61);
            case ROLL -> {
                roll(6);
                course.answer("done");
            }
            case HEIGHT, PLACE, LIMIT, UPHILL, GREEN, DONE -> course.answer("");
        }
    }

    void roll(int balls) {
        for (int i = 0; i < balls; i++) {
            bench.roll(rolls++ % 2 == 0);
        }
    }

    String last() {
        return said.get(said.size() - 1);
    }
}
