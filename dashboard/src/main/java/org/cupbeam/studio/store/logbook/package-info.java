/**
 * The record, to be looked through: players, runs, attempts, notes, and what was changed afterwards.
 *
 * <p>Belongs here: questions with filters, answered a page at a time in a bounded time however much is kept, and the same
 * rows as tables. Does not belong here: keeping events, and changing the record (see {@code store} itself).
 *
 * <p>Everything but players is listed newest first. A page's end is marked by the last row's own keys, so that what comes
 * in meanwhile moves nothing.
 */
package org.cupbeam.studio.store.logbook;
