/**
 * What is kept of leagues, and what leagues ask of the record.
 *
 * <p>Belongs here: which leagues there are, the runs that may count in one, what their players are called, and up to when each
 * lane has been heard. Does not belong here: who comes before whom (see {@code org.cupbeam.studio.league}).
 */
package org.cupbeam.studio.store.league;
