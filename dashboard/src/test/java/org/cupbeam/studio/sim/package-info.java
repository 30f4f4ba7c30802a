/**
 * The whole system in one thread: lanes, their links, a broker and the host under one scheduler and one seed, with
 * crashes between any two steps and within commits, power cuts that tear what was not synced, a network that is late,
 * breaks and says things twice, a broker that forgets, and wall clocks that jump.
 *
 * <p>Real are the lane's loop with its tracker and drill, the journal and its SQLite file, the link, the host's ingest, store
 * and boards: the program's own classes, whose threads' steps are taken by the scheduler. Simulated are time, the network,
 * the broker (as MQTT 3.1.1 has it, and worse), what a power cut leaves of a disk ({@link org.cupbeam.studio.sim.Disk}),
 * and whoever plays. Left out: Paho, the pages' HTTP, sensors (a clean drop and a pedal stand for all putts), and the
 * databases' first migration; each has tests of its own against the real thing.
 *
 * <p>Belongs here: what plays, breaks and judges the system. Does not belong here: tests of one part.
 */
package org.cupbeam.studio.sim;
