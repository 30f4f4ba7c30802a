/**
 * Looking after a store from outside: whether it is what it should be, a copy of it, a copy put in its place, and what can be
 * saved of a damaged one.
 *
 * <p>Belongs here: what the {@code store} commands do. Does not belong here: what a host does with a store that is open.
 */
package org.cupbeam.studio.store.upkeep;
