/**
 * Spoils good inputs and sees what becomes of them: accepted, or refused with a reason, within a bound of time and memory.
 *
 * <p>Belongs here: making inputs, keeping those that bring something new, judging reasons, the bounds. Does not belong
 * here: what any one reader takes; a {@link org.cupbeam.fuzz.Target} beside the tests of its room knows that. Tests of both
 * modules are compiled with it.
 */
package org.cupbeam.fuzz;
