/**
 * What the owner of a studio asks: how much of the time that it is open it is played in, when, on which lane, by how
 * many, and what broke.
 *
 * <p>Belongs here: opening hours, and figures worked out from what the store counted, as functions of their arguments
 * in the studio's own time zone. Does not belong here: SQL (see {@code store}), and how well anybody putts (see
 * {@code insight}).
 */
package org.cupbeam.studio.usage;
