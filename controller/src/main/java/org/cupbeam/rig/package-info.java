/**
 * What is fitted to a lane: the rig file, read and validated into {@link org.cupbeam.rig.Rig}, and written of one.
 *
 * <p>Belongs here: the sensors, their pins and where they stand. Does not belong here: reading the sensors
 * (see {@code edge}) or what their edges mean (see {@code track}).
 */
package org.cupbeam.rig;
