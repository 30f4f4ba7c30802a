/**
 * Who of the staff signs in by name, as what, and for which studios.
 *
 * <p>Belongs here: the rows of these people, and what holds for them whoever changes them. Does not belong here: secrets (only
 * their hashes come here), signing in, and what a role may do (see {@code web.access}).
 */
package org.cupbeam.studio.store.staff;
